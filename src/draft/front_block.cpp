#include "blocks.hpp"
#include "blockwright/block/balance_lines.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/block/shoulder.hpp"

namespace blockwright {
namespace {

Dart bust_dart(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  const DartPosition& at_shoulder = position_on(kBodiceFront, BlockEdge::Shoulder);
  const Vec along = direction(-upper.front_slope);
  const Point inner =
      upper.front_side_neck +
      kShoulderDartPlace * distance(upper.front_side_neck, upper.front_shoulder_point) * along;
  const Point outer = rotated_about(inner, upper.bust_point, -scye.bust_dart);
  return drafted_dart(at_shoulder, upper.bust_point, {outer, inner}, hold_back(at_shoulder, cup),
                      along);
}

}  // namespace

Piece front_block(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  const DartPosition& at_waist = position_on(kBodiceFront, BlockEdge::Waist);
  const Dart dart = bust_dart(upper, scye, cup);
  WaistWithDarts waist = waist_with_darts(at_waist, scye.waists.front, hold_back(at_waist, cup));
  waist.darts.insert(waist.darts.begin(), dart);
  const Point side_waist = scye.waists.front.side_waist;
  const Point bust_line_end{scye.waists.suppression.front_bust, upper.bust_point.y};
  return drafted_piece(
      kBodiceFront,
      {{waist.path, Path({Segment{side_waist, scye.front_underarm}}), scye.front_armhole,
        shoulder_edge(scye.front_shoulder_point, dart, upper.front_side_neck),
        Path({upper.front_neckline}), Path({Segment{upper.front_neck_point, Point{}}})},
       waist.darts,
       {distance(side_waist, bust_line_end), length(scye.front_armhole.curves().front())},
       {bust_line({0.0, upper.bust_point.y}, upper.bust_point, bust_line_end),
        across_line_over_dart({0.0, scye.across_front_closed.y}, dart, scye.bust_dart,
                              scye.across_front),
        scye.waists.front.stretches.back()},
       grain_beside_centre(upper.bust_point, upper.front_neck_point)});
}

}  // namespace blockwright
