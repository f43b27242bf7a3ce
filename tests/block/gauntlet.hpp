#pragma once

#include "blockwright/block/drafted_piece.hpp"

namespace blockwright_tests {

using namespace blockwright;

/// A kind that the program does not know: the flared cuff of a herald's glove. Four edges, sewn to
/// itself at its ends, with a dart that may open at the brim or at the wrist.
inline constexpr KindEdge kGauntletEdges[] = {
    {"wrist", BlockEdge::Other, EdgeRole::Hem, CornerShape::Smooth, 0},
    {"outer_end", BlockEdge::Other, EdgeRole::Seam, CornerShape::Smooth},
    {"brim", BlockEdge::Other, EdgeRole::Hem, CornerShape::Smooth, 0},
    {"inner_end", BlockEdge::Other, EdgeRole::Seam, CornerShape::Smooth},
};
inline constexpr KindLandmark kGauntletLandmarks[] = {
    {"wrist_corner", PointOn::Corner, 0, PointUse::CentreWaist},
    {"crest_point", PointOn::Apex, 2, PointUse::Marked},
};
inline constexpr KindNotch kGauntletNotches[] = {{"end", 1}};
inline constexpr KindLine kGauntletLines[] = {{"hand_line", LineUse::Plain}};
inline constexpr KindSeam kGauntletSeams[] = {{"cuff", 1, "gauntlet", "inner_end", true}};
inline constexpr DartPosition kGauntletDarts[] = {
    {"brim", "brim", false, Leg::First, UsualPlace::UnderApex, 10, 10, 10, 30},
    {"wrist", "wrist", false, Leg::First, UsualPlace::UnderApex, 10, 10, 10, 30},
};
inline constexpr PieceKind kGauntlet = {
    "gauntlet",     CutOn::Pair,        DraftedFor::Left, 1,
    kGauntletEdges, kGauntletLandmarks, kGauntletNotches, kGauntletLines,
    kGauntletSeams, kGauntletDarts};

/// 180 mm round the wrist, 110 mm high, with a dart of 20 mm in the brim.
inline Piece gauntlet() {
  const Point outer{180.0, 110.0}, inner{0.0, 110.0};
  Dart dart{"brim", "brim", {90.0, 60.0}, {}, {Point{100.0, 110.0}, Point{80.0, 110.0}}, {}};
  dart = held_back(dart, hold_back(kGauntletDarts[0], kUsualCup));
  dart.peak = dart_peak(dart.point, dart.inner_leg(), dart.outer_leg(), {-1.0, 0.0});
  return drafted_piece(
      kGauntlet, {{Path::through({{0.0, 0.0}, {180.0, 0.0}}), Path::through({{180.0, 0.0}, outer}),
                   Path::through({outer, dart.legs[0], dart.peak, dart.legs[1], inner}),
                   Path::through({inner, {0.0, 0.0}})},
                  {dart},
                  {55.0},
                  {Path::through({{0.0, 30.0}, {180.0, 30.0}})},
                  {{40.0, 20.0}, {40.0, 90.0}}});
}

}  // namespace blockwright_tests
