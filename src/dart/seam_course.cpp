#include "seam_course.hpp"

#include "blockwright/block/kinds.hpp"

#include <cmath>

namespace blockwright {
namespace {

// A princess seam passes beside the bust point, on the side of the armhole. From memory of
// handbooks.
constexpr double kBeside = 7.0;
// A back seam from the armhole keeps clear of the blade: else it would have to turn there. From
// memory.
constexpr double kOutsideBlade = 20.0;
// What is eased in over the bust, in mm, where the seam is let down for it; handbooks: 3 to 13.
constexpr double kUsualEase = 4.0;
constexpr double kToSpare = 0.1;

bool is_front(const Piece& piece) { return find_landmark(piece, PointUse::Marked) != nullptr; }

// How far to the side of its upper apex the seam passes.
double aside(const Opened& open, const PanelSeam& seam, std::size_t upper_edge) {
  if (is_front(open.piece)) {
    const double beside = seam.beside.value_or(kBeside);
    require_within({kLeastBesideBust, kMostBesideBust},
                   {"beside", "the way from the bust point to the seam", beside}, seam.from);
    return beside;
  }
  if (is_part(open.piece, open.edges[upper_edge].part_name(), BlockEdge::Armhole)) {
    const double beside = seam.beside.value_or(kOutsideBlade);
    require_within({kLeastOutsideBlade, kMostOutsideBlade},
                   {"beside", "the way from the blade point to the seam", beside}, seam.from);
    return beside;
  }
  if (!seam.beside) return 0.0;
  refuse("dart.place", seam.from, "this seam runs through the blade point",
         "leave \"beside\" out, or run the seam from the armhole", "beside");
}

// Takes out the dart next to the seam's waist end, on the side of the side panel.
TakenUp take_up(Opened& open, DartSpot seam) {
  const DartSpot other{seam.edge, seam.dart + 1};
  Dart& dart = open.at(other);
  const TakenUp taken{dart.apex, midpoint(dart.legs[0], dart.legs[1]), dart.legs[1] - dart.legs[0]};
  OpenEdge& edge = open.edges[seam.edge];
  Path& strip = edge.stretches[other.dart];
  strip = placed(strip, Placement::shift(taken.by));
  const Angle kink =
      turn_between(end_tangent(strip), start_tangent(edge.stretches[other.dart + 1]));
  lay_in(open, other, blended(edge, other.dart, kink));
  dart.legs[0] = dart.legs[1];
  join(open, other);
  return taken;
}

}  // namespace

SeamCourse course_of(Opened& open, const SeamEnds& ends, const PanelSeam& seam) {
  const double beside = aside(open, seam, ends.second.edge);
  SeamCourse course{open.at(ends.first), open.at(ends.second), beside, beside, false, false, {}};
  const bool one_apex = distance(course.first.apex, course.second.apex) < 1e-6;
  const std::string& upper = open.edges[ends.second.edge].part_name();
  course.upright = is_part(open.piece, upper, BlockEdge::Shoulder) ||
                   is_part(open.piece, upper, BlockEdge::Neckline);
  if (!is_front(open.piece)) {
    course.round_second = beside > 0.0;
    if (!one_apex) course.aside_first = 0.0;
  }
  while (ends.first.dart + 1 < open.edges[ends.first.edge].darts.size()) {
    course.others.push_back(take_up(open, ends.first));
  }
  return course;
}

SeamLines lines_of(SeamCourse& course, const Piece& piece, const PanelSeam& seam) {
  const auto ease = [](const SeamLines& lines) {
    return length(lines.side) - length(lines.centre);
  };
  SeamLines lines = smooth_seam(course);
  const bool too_little = is_front(piece) && ease(lines) < kLeastSeamEase;
  if (!too_little && ease(lines) <= kMostSeamEase) return lines;
  const double wanted = too_little ? kUsualEase : kMostSeamEase - kToSpare;
  // Each step comes nearer by all but a hundredth.
  for (int step = 0; step < 3; ++step) {
    course.let_down += wanted - ease(lines);
    if (course.let_down < -kMostTrimmed) break;
    lines = smooth_seam(course);
  }
  if (course.let_down >= -kMostTrimmed) return lines;
  refuse("dart.panel", seam.from,
         "the " + std::string(piece.name) + "'s two panels would differ by " +
             Length::mm(ease(lines)) + ", and a seam eases in " + Length::mm(kMostSeamEase) +
             " at most",
         "leave a waist dart beside the seam smaller, or ask for the plain seam: \"plain\": true");
}

Path with_start_moved(const Path& stretch, Vec by) {
  if (by == Vec{}) return stretch;
  const double whole = length(stretch);
  const auto moved = [&](Point p, double along) {
    const double left = 1.0 - along / whole;
    return p + (left * left * (3.0 - 2.0 * left)) * by;
  };
  Path path;
  double from = 0.0;
  for (const Curve& curve : stretch.curves()) {
    const double to = from + length(curve);
    const CubicCurve cubic = as_cubic(curve);
    const double third = (to - from) / 3.0;
    path.add(CubicCurve{moved(cubic.p0, from), moved(cubic.p1, from + third),
                        moved(cubic.p2, to - third), moved(cubic.p3, to)});
    from = to;
  }
  return path;
}

}  // namespace blockwright
