#include "blocks.hpp"
#include "blockwright/pattern/dart_position.hpp"
#include "edges.hpp"
#include "rules.hpp"

namespace blockwright {
namespace {

Dart bust_dart(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  const Vec along = direction(-upper.front_slope);
  const Point inner = upper.front_side_neck +
                      rules::kShoulderDartPlace *
                          distance(upper.front_side_neck, upper.front_shoulder_point) * along;
  const Point outer = rotated_about(inner, upper.bust_point, -scye.bust_dart);
  return shoulder_dart("shoulder", upper.bust_point, inner, outer, along,
                       hold_back("front", "shoulder", cup));
}

/// Level with the dart closed: from the centre front to the dart, and its turned outer part.
Path across_front_line(const NeckAndShoulder& upper, const Scye& scye, const Dart& dart) {
  const double level = scye.across_front_closed.y;
  const double share = (level - dart.apex.y) / (dart.legs[1].y - dart.apex.y);
  const Point on_inner = between(dart.apex, dart.legs[1], share);
  const Point on_outer = rotated_about(on_inner, upper.bust_point, -scye.bust_dart);
  return Path::through({{0.0, level}, on_inner, on_outer, scye.across_front});
}

}  // namespace

Piece front_block(const NeckAndShoulder& upper, const Scye& scye, double cup) {
  Piece piece;
  piece.name = "front";
  piece.cut_on = CutOn::Fold;
  const Dart dart = bust_dart(upper, scye, cup);
  const WaistWithDarts waist =
      waist_with_darts(scye.waists.front, "waist", hold_back("front", "waist", cup));
  const Point side_waist = scye.waists.front.side_waist;
  const Path neckline({upper.front_neckline});
  piece.edges = {
      {"waist", EdgeRole::Hem, waist.path},
      {"side", EdgeRole::Seam, Path({Segment{side_waist, scye.front_underarm}})},
      {"armhole", EdgeRole::Hem, scye.front_armhole},
      {"shoulder", EdgeRole::Seam,
       shoulder_edge(scye.front_shoulder_point, dart, upper.front_side_neck)},
      {"neckline", EdgeRole::Hem, neckline},
      {"centre_front", EdgeRole::Fold, Path({Segment{upper.front_neck_point, Point{}}})},
  };
  piece.darts = {dart};
  piece.darts.insert(piece.darts.end(), waist.darts.begin(), waist.darts.end());
  const Point bust_line_end{scye.waists.suppression.front_bust, upper.bust_point.y};
  piece.balance_lines = {
      {"bust_line", Path({Segment{{0.0, upper.bust_point.y}, bust_line_end}})},
      {"across_front_line", across_front_line(upper, scye, dart)},
      {"waist_line", scye.waists.front.stretches.back()},
  };
  piece.notches = {
      {"side", "side", distance(side_waist, bust_line_end), 1, "back", "side"},
      {"armhole", "armhole", length(scye.front_armhole.curves().front()), 1, "", ""},
  };
  piece.landmarks = {
      {"centre_waist", {}},
      {"front_neck_point", upper.front_neck_point},
      {"side_neck_point", upper.front_side_neck},
      {"shoulder_point", scye.front_shoulder_point},
      {"across_front_point", scye.across_front},
      {"underarm_point", scye.front_underarm},
      {"side_waist_point", side_waist},
      {"bust_point", upper.bust_point},
  };
  piece.grainline = {{0.35 * upper.bust_point.x, 0.15 * upper.front_neck_point.y},
                     {0.35 * upper.bust_point.x, 0.85 * upper.front_neck_point.y}};
  return piece;
}

}  // namespace blockwright
