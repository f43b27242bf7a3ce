#include "blocks.hpp"
#include "blockwright/block/balance_lines.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/block/shoulder.hpp"

namespace blockwright {

Piece back_block(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  const DartPosition& at_shoulder = position_on(kBodiceBack, BlockEdge::Shoulder);
  const DartPosition& at_waist = position_on(kBodiceBack, BlockEdge::Waist);
  const Dart dart =
      drafted_dart(at_shoulder, upper.blade_point, {upper.dart_outer_leg, upper.dart_inner_leg},
                   hold_back(at_shoulder, cup), direction(-upper.back_slope));
  WaistWithDarts waist = waist_with_darts(at_waist, scye.waists.back, hold_back(at_waist, cup));
  waist.darts.insert(waist.darts.begin(), dart);
  const Point side_waist = scye.waists.back.side_waist;
  const double bust_level = side_waist.y + scye.waists.bust_line;
  const Point bust_line_end{scye.waists.suppression.back_bust, bust_level};
  return drafted_piece(
      kBodiceBack,
      {{waist.path, Path({Segment{side_waist, scye.back_underarm}}), scye.back_armhole,
        shoulder_edge(upper.back_shoulder_point, dart, upper.back_side_neck),
        Path({upper.back_neckline}), Path({Segment{upper.nape, Point{}}})},
       waist.darts,
       {distance(side_waist, bust_line_end), length(scye.back_armhole.curves().front())},
       {bust_line({0.0, bust_level}, {}, bust_line_end),
        Path({Segment{{0.0, upper.across_back_level}, scye.across_back}}),
        scye.waists.back.stretches.back()},
       grain_beside_centre(upper.blade_point, upper.nape)});
}

}  // namespace blockwright
