#include "blocks.hpp"
#include "blockwright/pattern/dart_position.hpp"
#include "edges.hpp"

namespace blockwright {

Piece back_block(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  Piece piece;
  piece.name = "back";
  piece.cut_on = CutOn::Pair;
  const Dart dart =
      shoulder_dart("shoulder", upper.blade_point, upper.dart_inner_leg, upper.dart_outer_leg,
                    direction(-upper.back_slope), hold_back("back", "shoulder", cup));
  const WaistWithDarts waist =
      waist_with_darts(scye.waists.back, "waist", hold_back("back", "waist", cup));
  const Point side_waist = scye.waists.back.side_waist;
  piece.edges = {
      {"waist", EdgeRole::Hem, waist.path},
      {"side", EdgeRole::Seam, Path({Segment{side_waist, scye.back_underarm}})},
      {"armhole", EdgeRole::Hem, scye.back_armhole},
      {"shoulder", EdgeRole::Seam,
       shoulder_edge(upper.back_shoulder_point, dart, upper.back_side_neck)},
      {"neckline", EdgeRole::Hem, Path({upper.back_neckline})},
      {"centre_back", EdgeRole::Opening, Path({Segment{upper.nape, Point{}}})},
  };
  piece.darts = {dart};
  piece.darts.insert(piece.darts.end(), waist.darts.begin(), waist.darts.end());
  const double bust_level = side_waist.y + scye.waists.bust_line;
  const Point bust_line_end{scye.waists.suppression.back_bust, bust_level};
  piece.balance_lines = {
      {"bust_line", Path({Segment{{0.0, bust_level}, bust_line_end}})},
      {"across_back_line", Path({Segment{{0.0, upper.across_back_level}, scye.across_back}})},
      {"waist_line", scye.waists.back.stretches.back()},
  };
  piece.notches = {
      {"side", "side", distance(side_waist, bust_line_end), 1, "front", "side"},
      {"armhole", "armhole", length(scye.back_armhole.curves().front()), 2, "", ""},
  };
  piece.landmarks = {
      {"centre_waist", {}},
      {"nape", upper.nape},
      {"side_neck_point", upper.back_side_neck},
      {"shoulder_point", upper.back_shoulder_point},
      {"across_back_point", scye.across_back},
      {"underarm_point", scye.back_underarm},
      {"side_waist_point", side_waist},
      {"blade_point", upper.blade_point},
  };
  piece.grainline = {{0.35 * upper.blade_point.x, 0.15 * upper.nape.y},
                     {0.35 * upper.blade_point.x, 0.85 * upper.nape.y}};
  return piece;
}

}  // namespace blockwright
