#pragma once

#include "blockwright/geometry/curve.hpp"
#include "blockwright/pattern/piece.hpp"

namespace blockwright {

/// A dart on an edge that runs from `from` to `to`: its legs lie at so many mm before and after the
/// foot of the apex on that line. The peak is folded towards the start of the edge.
inline Dart dart_on_line(const std::string& name, const std::string& edge, Point apex, Point from,
                         Point to, double half_intake) {
  const Vec along = unit(to - from);
  const Point foot = from + dot(apex - from, along) * along;
  Dart dart;
  dart.name = name;
  dart.edge = edge;
  dart.apex = apex;
  dart.point = between(apex, foot, 0.15);
  dart.legs = {foot - half_intake * along, foot + half_intake * along};
  dart.peak = dart_peak(apex, dart.legs[0], dart.legs[1], along);
  return dart;
}

/// A half back, about as a block has it: two darts on the waist, one on the shoulder, an armhole
/// and a neckline. Its straight waist is 200 mm with the darts open and 20 + 16 mm less when
/// closed.
inline Piece sample_piece() {
  const Point waist_end = {200.0, 0.0}, underarm = {215.0, 200.0}, shoulder = {160.0, 420.0};
  const Point neck = {70.0, 445.0}, nape = {0.0, 425.0};
  const Dart inner = dart_on_line("waist", "waist", {70.0, 150.0}, {}, waist_end, 10.0);
  const Dart outer = dart_on_line("waist_outer", "waist", {128.0, 140.0}, {}, waist_end, 8.0);
  const Dart blade = dart_on_line("shoulder", "shoulder", {105.0, 330.0}, shoulder, neck, 6.5);
  Piece piece;
  piece.name = "back";
  piece.edges = {
      {"waist", EdgeRole::Hem,
       Path::through({{},
                      inner.legs[0],
                      inner.peak,
                      inner.legs[1],
                      outer.legs[0],
                      outer.peak,
                      outer.legs[1],
                      waist_end})},
      {"side", EdgeRole::Seam, Path::through({waist_end, underarm})},
      {"armhole", EdgeRole::FreeEdge,
       Path({fair_curve(underarm, {-1.0, 0.3}, shoulder, left_of(neck - shoulder))})},
      {"shoulder", EdgeRole::Seam,
       Path::through({shoulder, blade.legs[0], blade.peak, blade.legs[1], neck})},
      {"neckline", EdgeRole::FreeEdge,
       Path({corner_curve(neck, left_of(neck - shoulder), nape, {-1.0, 0.0}, 0.5)})},
      {"centre_back", EdgeRole::Opening, Path::through({nape, {}})},
  };
  piece.darts = {inner, outer, blade};
  piece.notches = {{"side", "side", 120.0, 1, "front", "side"},
                   {"armhole", "armhole", 90.0, 2, "", ""}};
  piece.balance_lines = {{"bust_line", Path::through({{0.0, 200.0}, underarm})}};
  piece.landmarks = {{"nape", nape}, {"shoulder_point", shoulder}};
  piece.grainline = {{40.0, 60.0}, {40.0, 360.0}};
  return piece;
}

}  // namespace blockwright
