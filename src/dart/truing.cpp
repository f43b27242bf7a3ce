#include "blockwright/dart/truing.hpp"

#include "blending.hpp"
#include "blockwright/dart/opened.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path_parts.hpp"
#include "moving.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

constexpr Angle kSmooth = Angle::degrees(1e-7);
constexpr Angle kLeastKink = Angle::degrees(0.01);
constexpr double kMouthSnap = 1e-6;  // mm

Angle stitched_angle(const Dart& dart) {
  return turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
}

// How the seam turns where the dart's stitched legs meet.
Angle kink_across(const Dart& dart, const Path& before, const Path& after) {
  return turn_between(end_tangent(before), rotated(start_tangent(after), -stitched_angle(dart)));
}

std::optional<BlendedEdge> blend_across(Opened& open, DartSpot spot) {
  OpenEdge& edge = open.edges[spot.edge];
  Path &before = edge.stretches[spot.dart], &after = edge.stretches[spot.dart + 1];
  if (before.empty() || after.empty()) return std::nullopt;
  const Angle kink = kink_across(open.at(spot), before, after);
  const double size = std::abs(kink.radians());
  if (size < kSmooth.radians() || size > kMostKink.radians()) return std::nullopt;
  Blended in = with_end_turned(before, 0.5 * kink, kBlendingReach);
  Blended out = with_start_turned(after, -(0.5 * kink), kBlendingReach);
  before = std::move(in.path);
  after = std::move(out.path);
  keep_marks_on(open, spot.edge, spot.dart);
  keep_marks_on(open, spot.edge, spot.dart + 1);
  if (size < kLeastKink.radians()) return std::nullopt;
  return BlendedEdge{open.piece.name, edge.name, open.at(spot).name, kink,
                     std::fmax(in.moved, out.moved)};
}

// From the inner leg's end through the folded cloth to the fold; empty where the seam is too short.
Path to_the_fold(const Dart& dart, const Path& away_from_mouth) {
  const Vec leg = unit(dart.inner_leg() - dart.point);
  const Vec centre = unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point);
  const Path folded = placed(away_from_mouth, Placement::mirror_in(dart.inner_leg(), leg));
  for (const LineCrossing& hit : intersections(folded, dart.point, centre)) {
    const bool over_the_mouth = hit.along_line > 0.5 * distance(dart.point, dart.legs[0]);
    if (over_the_mouth) return ending_at(part_before(folded, hit.place), hit.point);
  }
  return {};
}

// The mouth as it is cut through the folded dart, from first leg to second.
Path folded_mouth(const Dart& dart, const OpenEdge& edge, std::size_t d) {
  const bool first = dart.pressed_to == Leg::First;
  const Path inner = first ? reversed(edge.stretches[d]) : edge.stretches[d + 1];
  if (inner.empty()) return mouth_path(dart);
  Path half = to_the_fold(dart, inner);
  if (half.empty()) return mouth_path(dart);
  const Vec centre = unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point);
  const Path other =
      starting_at(placed(half, Placement::mirror_in(dart.point, centre)), dart.outer_leg());
  Path mouth = starting_at(std::move(half), dart.inner_leg());
  append(mouth, reversed(other), kMouthSnap);
  return first ? mouth : reversed(mouth);
}

// Where the folded mouth meets the fold: its stroke's end on the dart's centre line.
Point fold_of(const Dart& dart, const Path& mouth) {
  const Vec centre = unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point);
  Point fold = dart.peak;
  double nearest_yet = distance(dart.legs[0], dart.legs[1]);
  for (const Curve& stroke : mouth.curves()) {
    const double off = std::abs(cross(centre, end_of(stroke) - dart.point));
    if (off >= nearest_yet) continue;
    nearest_yet = off;
    fold = end_of(stroke);
  }
  return fold;
}

// The piece with a dart's mouth drawn along `mouth` in place of the straight strokes by its peak.
void draw_mouth(Piece& piece, const std::string& dart_name, const Path& mouth) {
  const Dart& dart = piece.dart(dart_name);
  for (Edge& edge : piece.edges) {
    if (edge.name != dart.edge) continue;
    const NearestOnPath in = nearest(edge.path, dart.legs[0]),
                        out = nearest(edge.path, dart.legs[1]);
    Path path = part_before(edge.path, in.place);
    append(path, mouth, kMouthSnap);
    append(path, part_after(edge.path, out.place), kMouthSnap);
    edge.path = without_specks(std::move(path));
    const double longer = length(mouth) - (out.along - in.along);
    const auto shift = [&](double& along) {
      along += along > in.along + kMouthSnap ? longer : 0.0;
    };
    for (Notch& notch : piece.notches) {
      if (notch.edge == edge.name) shift(notch.along);
    }
    for (Fullness& fullness : piece.fullness) {
      if (fullness.edge != edge.name) continue;
      shift(fullness.from);
      shift(fullness.to);
    }
  }
}

Piece trued(const Piece& piece, std::vector<BlendedEdge>& all_blended) {
  Opened open = opened(piece);
  for (std::size_t e = 0; e < open.edges.size(); ++e) {
    for (std::size_t d = 0; d < open.edges[e].darts.size(); ++d) {
      if (auto blended = blend_across(open, {e, d})) all_blended.push_back(*blended);
    }
  }
  for (const Dart& dart : piece.darts) set_peak(open, dart.name);
  Piece result = put_together(open);
  for (const OpenEdge& edge : open.edges) {
    for (std::size_t d = 0; d < edge.darts.size(); ++d) {
      const Path mouth = folded_mouth(edge.darts[d], edge, d);
      draw_mouth(result, edge.darts[d].name, mouth);
      for (Dart& dart : result.darts) {
        if (dart.name == edge.darts[d].name) dart.peak = fold_of(dart, mouth);
      }
    }
  }
  return result;
}

}  // namespace

TruedPattern true_darts(const Pattern& pattern) {
  TruedPattern result;
  result.pattern.seams = pattern.seams;
  for (const Piece& piece : pattern.pieces) {
    result.pattern.pieces.push_back(trued(piece, result.blended));
  }
  return result;
}

Piece true_darts(const Piece& piece) {
  std::vector<BlendedEdge> blended;
  return trued(piece, blended);
}

std::optional<Problem> find_problem_on_paper(const Piece& piece) {
  if (auto problem = find_problem(piece)) return problem;
  return find_problem(true_darts(piece));
}

}  // namespace blockwright
