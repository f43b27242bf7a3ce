#include "blockwright/block/balance_lines.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/block/shoulder.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <cmath>

namespace blockwright {
namespace {

/// What a front and a back are made of.
struct HalfLines {
  const UpperLines& upper;
  const WaistEdge& waist;
  const SideSeam& side;
  const Path& armhole;
  Point shoulder_point;
  Dart shoulder_dart;
  Path bust_line, across_line;
};

bool is_straight(const SideSeam& side) {
  return std::abs(cross(unit(side.bust - side.waist), side.upper)) < rules::kSolvedAngle;
}

/// In one stretch where it does not turn in at the bust line.
Path side_path(const SideSeam& side) {
  if (is_straight(side)) return Path({Segment{side.waist, side.underarm}});
  return Path::through({side.waist, side.bust, side.underarm});
}

Piece half_block(const PieceKind& kind, const HalfLines& lines, double cup) {
  const DartPosition& at_waist = position_on(kind, BlockEdge::Waist);
  WaistWithDarts waist = waist_with_darts(at_waist, lines.waist, hold_back(at_waist, cup));
  waist.darts.insert(waist.darts.begin(), lines.shoulder_dart);
  const Point centre_neck = lines.upper.centre_neck;
  const Path side = side_path(lines.side);
  return drafted_piece(
      kind, {{waist.path, side, lines.armhole,
              shoulder_edge(lines.shoulder_point, lines.shoulder_dart, lines.upper.side_neck),
              Path({lines.upper.neckline}), Path({Segment{centre_neck, Point{}}})},
             waist.darts,
             {distance(lines.side.waist, lines.side.bust),
              notch_share(kind, BlockEdge::Armhole) * length(lines.armhole)},
             {lines.bust_line, lines.across_line, side_stretch(lines.waist)},
             grain_beside_centre(lines.shoulder_dart.apex, centre_neck)});
}

Dart bust_dart(const NeckAndShoulder& upper, Angle angle, double cup) {
  const DartPosition& at_shoulder = position_on(kBodiceFront, BlockEdge::Shoulder);
  const auto& [centre_neck, side_neck, slope, shoulder_point, sewn_point, neckline] = upper.front;
  const Vec along = direction(-slope);
  const Point inner = side_neck + kShoulderDartPlace * distance(side_neck, shoulder_point) * along;
  const Point outer = rotated_about(inner, upper.bust_point, -angle);
  return drafted_dart(at_shoulder, upper.bust_point, {outer, inner}, hold_back(at_shoulder, cup),
                      along);
}

}  // namespace

Piece front_block(const Drawn& drawn, double cup) {
  const auto& [upper, waists, lower] = drawn;
  const Dart dart = bust_dart(upper, lower.settled.dart, cup);
  const Point bust = upper.bust_point;
  return half_block(
      kBodiceFront,
      {upper.front, waists.front, lower.front_side, lower.front, lower.front_shoulder_point, dart,
       bust_line({0.0, bust.y}, bust, lower.front_side.bust),
       across_line_over_dart({0.0, lower.across_front_closed.y}, dart, lower.settled.dart,
                             lower.across_front)},
      cup);
}

Piece back_block(const Drawn& drawn, double cup) {
  const auto& [upper, waists, lower] = drawn;
  const DartPosition& at_shoulder = position_on(kBodiceBack, BlockEdge::Shoulder);
  const Dart dart =
      drafted_dart(at_shoulder, upper.blade_point, {upper.dart_outer_leg, upper.dart_inner_leg},
                   hold_back(at_shoulder, cup), direction(-upper.back.slope));
  return half_block(
      kBodiceBack,
      {upper.back, waists.back, lower.back_side, lower.back, upper.back.shoulder_point, dart,
       bust_line({0.0, lower.back_side.bust.y}, {}, lower.back_side.bust),
       Path({Segment{{0.0, upper.blade_point.y}, lower.across_back}})},
      cup);
}

}  // namespace blockwright
