#include "blockwright/dart/truing.hpp"

#include "blending.hpp"
#include "blockwright/geometry/intersections.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

constexpr Angle kSmooth = Angle::degrees(1e-7);
constexpr Angle kLeastKink = Angle::degrees(0.01);
constexpr double kMouthSnap = 1e-6;  // mm

Angle stitched_angle(const Dart& dart) {
  return turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
}

// The direction of the fold, from the dart's point to its mouth.
Vec along_fold(const Dart& dart) { return unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point); }

Angle angle_at_apex(const Dart& dart) {
  return turn_between(dart.legs[0] - dart.apex, dart.legs[1] - dart.apex);
}

// How the seam turns where the dart's legs meet, closed by that angle.
Angle kink_across(Angle closed, const Path& before, const Path& after) {
  return turn_between(end_tangent(before), rotated(start_tangent(after), -closed));
}

// A corner was meant if the seam has it with the dart closed to its apex. What stitching only from
// the dart point adds was not, and of a wide dart on a short leg that alone is over kMostKink.
bool is_meant_corner(const Dart& dart, const Path& before, const Path& after) {
  return std::abs(kink_across(angle_at_apex(dart), before, after).radians()) > kMostKink.radians();
}

std::optional<BlendedEdge> blend_across(Opened& open, DartSpot spot) {
  const OpenEdge& edge = open.edges[spot.edge];
  const Path &before = edge.stretches[spot.dart], &after = edge.stretches[spot.dart + 1];
  if (before.empty() || after.empty()) return std::nullopt;
  const Dart& dart = open.at(spot);
  const Angle kink = kink_across(stitched_angle(dart), before, after);
  const double size = std::abs(kink.radians());
  if (size < kSmooth.radians() || is_meant_corner(dart, before, after)) return std::nullopt;
  const Blended stretches = blended(edge, spot.dart, kink);
  lay_in(open, spot, stretches);
  if (size < kLeastKink.radians()) return std::nullopt;
  return BlendedEdge{open.piece.name, edge.name, dart.name, kink, stretches.moved};
}

// From the inner leg's end through the folded cloth to the fold; empty where the seam is too short.
Path to_the_fold(const Dart& dart, const Path& away_from_mouth) {
  const Vec leg = unit(dart.inner_leg() - dart.point);
  const Path folded = placed(away_from_mouth, Placement::mirror_in(dart.inner_leg(), leg));
  for (const LineCrossing& hit : intersections(folded, dart.point, along_fold(dart))) {
    const bool over_the_mouth = hit.along_line > 0.5 * distance(dart.point, dart.legs[0]);
    if (over_the_mouth) return ending_at(part_before(folded, hit.place), hit.point);
  }
  return {};
}

// The mouth as it is cut through the folded dart, from first leg to second, and where it meets the
// fold.
struct FoldedMouth {
  Path path;
  Point fold;
};

FoldedMouth folded_mouth(const OpenEdge& edge, std::size_t d) {
  const Dart& dart = edge.darts[d];
  const bool first = dart.pressed_to == Leg::First;
  const Path inner = first ? reversed(edge.stretches[d]) : edge.stretches[d + 1];
  Path half = to_the_fold(dart, inner);
  if (half.empty()) return {mouth_path(dart), dart.peak};
  const Point fold = half.end();
  const Placement over_fold = Placement::mirror_in(dart.point, along_fold(dart));
  const Path other = starting_at(placed(half, over_fold), dart.outer_leg());
  Path mouth = starting_at(std::move(half), dart.inner_leg());
  append(mouth, reversed(other), kMouthSnap);
  return {first ? mouth : reversed(mouth), fold};
}

// Draws the dart's mouth as folded in place of the straight strokes by its peak.
void draw_mouth(Piece& piece, Dart& dart, const FoldedMouth& mouth) {
  Edge& edge = *find_named(piece.edges, dart.edge);
  const NearestOnPath in = nearest(edge.path, dart.legs[0]), out = nearest(edge.path, dart.legs[1]);
  Path path = part_before(edge.path, in.place);
  append(path, mouth.path, kMouthSnap);
  append(path, part_after(edge.path, out.place), kMouthSnap);
  edge.path = without_specks(std::move(path));
  const double longer = length(mouth.path) - (out.along - in.along);
  const auto shift = [&](double& along) { along += along > in.along + kMouthSnap ? longer : 0.0; };
  for (Notch& notch : piece.notches) {
    if (notch.edge == edge.name) shift(notch.along);
  }
  for (Fullness& fullness : piece.fullness) {
    if (fullness.edge != edge.name) continue;
    shift(fullness.from);
    shift(fullness.to);
  }
  dart.peak = mouth.fold;
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
      draw_mouth(result, *find_named(result.darts, edge.darts[d].name), folded_mouth(edge, d));
    }
  }
  return result;
}

}  // namespace

TruedPattern true_darts(const Pattern& pattern) {
  TruedPattern result;
  result.pattern = pattern;
  for (Piece& piece : result.pattern.pieces) piece = trued(piece, result.blended);
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
