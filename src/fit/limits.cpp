#include "limits.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/block/corners.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "closed_shoulder.hpp"
#include "half_piece.hpp"
#include "parts.hpp"
#include "refuse.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

constexpr double kTouch = 1e-6;        // mm
constexpr double kWidestAngle = 45.0;  // degrees; common practice, no source
constexpr double kGrown = 0.5;         // mm: less is rounding of peaks and arcs
constexpr double kTurned = 0.01;       // degrees: less is rounding
constexpr double kSeamsMeet = 0.05;    // mm

void require_shoulder(const Opened& before, const Opened& after) {
  const double was = closed_length(before, BlockEdge::Shoulder);
  const double is = closed_length(after, BlockEdge::Shoulder);
  if (is >= kLeastShoulder || is >= was - kTouch) return;
  refuse_fit("fit.strap",
             "the shoulder would be " + Length::mm(is) + " long; at least " +
                 Length::mm(kLeastShoulder) + " are left on a block",
             "give a smaller amount, or draw a strap on the finished block");
}

// How near the outline comes to the bust point; the centre front is not looked at.
double nearest_edge(const Opened& front, std::string& name) {
  const Point bust = front.at(shoulder_dart(front)).apex;
  double least = 1e9;
  for (std::size_t e = 0; e + 1 < front.edges.size(); ++e) {
    for (const Path& stretch : front.edges[e].stretches) {
      const double off = nearest(stretch, bust).distance;
      if (off < least) name = front.edges[e].name;
      least = std::fmin(least, off);
    }
  }
  return least;
}

void require_clear_of_bust(const HalfBlock& before, const HalfBlock& after) {
  std::string name;
  const double was = nearest_edge(before.front, name), is = nearest_edge(after.front, name);
  if (is >= kLeastToBustPoint || is >= was - kTouch) return;
  refuse_fit("fit.close",
             "the " + name + " would come within " + Length::mm(is) +
                 " of the bust point; it must stay " + Length::mm(kLeastToBustPoint) + " off",
             "give a smaller amount, or draw the line on the finished block");
}

bool darts_cross(const Dart& a, const Dart& b) {
  if (distance(a.apex, b.apex) <= kTouch) return false;
  const Path in_a = Path::through({a.legs[0], a.apex, a.legs[1]});
  const Path in_b = Path::through({b.legs[0], b.apex, b.legs[1]});
  return !intersections(in_a, in_b).empty();
}

void require_darts(const Opened& before, const Piece& piece) {
  if (const auto cut = find_cut_dart(piece)) {
    refuse_fit(
        "fit.crossing",
        "the " + piece.name + " " + cut->edge + " would cut through the " + cut->dart + " dart",
        "give a smaller amount, or lead the dart to another edge");
  }
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!darts_cross(piece.darts[i], piece.darts[j])) continue;
      refuse_fit(
          "fit.crossing",
          "the darts " + piece.darts[i].name + " and " + piece.darts[j].name + " would cross",
          "give a smaller amount");
    }
    const auto was = find_dart(before, piece.darts[i].name);
    const double angle = piece.darts[i].angle().degrees();
    if (angle <= kWidestAngle || (was && angle <= before.at(*was).angle().degrees())) continue;
    refuse_fit("fit.limit",
               "the " + piece.name + " " + piece.darts[i].name + " dart would take " +
                   fixed(angle, 1) + " degrees; at most " + fixed(kWidestAngle, 0) + " can be cut",
               "split the dart first, or draft anew");
  }
}

// Where a stretch beside a dart runs back, the dart has been moved over the end of its edge.
void require_stretches(const Opened& before, const Opened& after) {
  for (std::size_t e = 0; e < after.edges.size(); ++e) {
    const std::vector<Path>&was = before.edges[e].stretches, &is = after.edges[e].stretches;
    for (std::size_t i = 0; was.size() == is.size() && i < is.size(); ++i) {
      if (was[i].empty() || is[i].empty()) continue;
      if (dot(is[i].end() - is[i].start(), was[i].end() - was[i].start()) > 0.0) continue;
      refuse_fit("fit.place",
                 "nothing of the " + after.piece.name + " " + after.edges[e].name +
                     " would be left beside its dart",
                 "give a smaller amount, or move the dart first");
    }
  }
}

void require_outline(const Piece& piece) {
  if (const auto problem = find_problem_on_paper(piece)) {
    refuse_fit("fit.crossing",
               "the " + piece.name + " would not hold together: " + problem->message,
               "give a smaller amount");
  }
}

double seam_gap(const HalfBlock& half, BlockEdge edge) {
  return closed_length(half.front, edge) - closed_length(half.back, edge);
}

void require_seam(const HalfBlock& before, const HalfBlock& after, BlockEdge edge,
                  const std::string& name) {
  const double off = std::abs(seam_gap(after, edge) - seam_gap(before, edge));
  if (off <= kSeamsMeet) return;
  refuse_fit("fit.limit",
             "the front and back " + name +
                 " would no longer be sewn together: they would differ by " + Length::mm(off) +
                 "; at most " + Length::mm(kSeamsMeet) + " is allowed",
             "give smaller amounts: here, or in the corrections that came before");
}

// --- what is judged -----------------------------------------------------------------------

void judge_curves(const Opened& before, const Opened& after, Problems& problems) {
  for (std::size_t e = 0; e < after.edges.size(); ++e) {
    const OpenEdge& edge = after.edges[e];
    const KindEdge* kind = kind_edge(after.piece, edge.name);
    if (kind == nullptr || !kind->most_bends) continue;
    const int got = inflections(edge.stretches);
    if (got <= std::max(*kind->most_bends, inflections(before.edges[e].stretches))) continue;
    problems.push_back({Severity::Warning, "fit.curve", after.piece.name + "." + edge.name,
                        "the curve turns back " + std::to_string(got) + " times; at most " +
                            std::to_string(*kind->most_bends) + " is fair",
                        "look at the line before cutting, and draw it again by hand if need be"});
  }
}

std::vector<BlockCorner> corners_of(const HalfBlock& half) {
  Pattern pattern{{put_together(half.front), put_together(half.back)}, {}};
  pattern.seams = seams_between(pattern.pieces);
  return block_corners(pattern);
}

void judge_corners(const HalfBlock& block, const HalfBlock& after, Problems& problems) {
  const std::vector<BlockCorner> was = corners_of(block), is = corners_of(after);
  for (std::size_t i = 0; i < is.size(); ++i) {
    const double off = std::abs(is[i].off());
    if (off <= is[i].within || off <= std::abs(was[i].off()) + kTurned) continue;
    problems.push_back(
        {Severity::Warning, "fit.curve", is[i].where,
         "the angle is " + fixed(is[i].degrees, 1) + " degrees, off " + fixed(is[i].wanted, 0),
         "true the joined edges by hand before cutting"});
  }
}

void judge_darts(const Opened& block, const Opened& after, Problems& problems) {
  for (const OpenEdge& edge : after.edges) {
    for (const Dart& dart : edge.darts) {
      const DartPosition* position = find_position(after.piece, edge.name);
      const auto was = find_dart(block, dart.name);
      const double before = was ? block.at(*was).intake() : 0.0;
      if (!position || dart.intake() <= position->widest_mouth ||
          dart.intake() <= before + kGrown) {
        continue;
      }
      problems.push_back({Severity::Warning, "fit.limit", after.piece.name + "." + dart.name,
                          "the dart grew from " + Length::mm(before) + " to " +
                              Length::mm(dart.intake()) + "; about " +
                              Length::mm(position->widest_mouth) + " is usual here",
                          "split it, or move a part elsewhere"});
    }
  }
}

}  // namespace

void require_possible(const HalfBlock& before, const HalfBlock& after) {
  require_shoulder(before.front, after.front);
  require_shoulder(before.back, after.back);
  require_clear_of_bust(before, after);
  require_stretches(before.front, after.front);
  require_stretches(before.back, after.back);
  for (const auto& [was, is] :
       {std::pair{&before.front, &after.front}, {&before.back, &after.back}}) {
    if (same_shape(*was, *is)) continue;
    const Piece piece = put_together(*is);
    require_darts(*was, piece);
    require_outline(piece);
  }
  require_seam(before, after, BlockEdge::Side, "side seams");
  require_seam(before, after, BlockEdge::Shoulder, "shoulders");
}

Problems judge_centres(const Halves& halves) {
  Problems problems;
  for (const auto& [right, left] : {std::pair{&halves.right.front, &halves.left().front},
                                    {&halves.right.back, &halves.left().back}}) {
    const double off =
        closed_length(*right, BlockEdge::Centre) - closed_length(*left, BlockEdge::Centre);
    if (std::abs(off) <= kMeetsAtCentre) continue;
    problems.push_back(
        {Severity::Warning, "fit.seam", right->edges.back().name,
         "the centre edges of right and left now differ by " + Length::mm(std::abs(off)),
         "correct both sides alike, or join neckline and waist across the centre by "
         "hand"});
  }
  return problems;
}

Problems judge_half(const HalfBlock& block, const HalfBlock& after) {
  Problems problems;
  for (const auto& [was, is] :
       {std::pair{&block.front, &after.front}, {&block.back, &after.back}}) {
    judge_curves(*was, *is, problems);
    judge_darts(*was, *is, problems);
  }
  judge_corners(block, after, problems);
  return problems;
}

}  // namespace blockwright
