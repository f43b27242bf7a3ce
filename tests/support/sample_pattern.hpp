#pragma once

#include "blockwright/block/kinds.hpp"
#include "blockwright/geometry/curve.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <cmath>
#include <string>
#include <vector>

namespace blockwright_tests {

// A bodice block set by hand, of about a 90 cm bust: the shape of what the draft makes, without the
// draft. Corners, curves, darts and marks are all there; no measurement is meant to come back.

using namespace blockwright;

inline Dart sample_dart(const std::string& name, const std::string& edge, Point apex, Point first,
                        Angle opening, double hold_back, bool inner_is_first, Vec seam) {
  Dart dart{name, edge, apex, apex, {first, rotated_about(first, apex, opening)}, {}};
  const Point inner = dart.legs[inner_is_first ? 0 : 1], outer = dart.legs[inner_is_first ? 1 : 0];
  dart.peak = dart_peak(apex, inner, outer, seam);
  dart.point = apex + hold_back * unit(midpoint(inner, outer) - apex);
  return dart;
}

inline void add_mouth(Path& path, const Dart& dart) {
  path.add(Segment{dart.legs[0], dart.peak});
  path.add(Segment{dart.peak, dart.legs[1]});
}

// Level line from the centre to where it leaves the piece.
inline BalanceLine sample_level(const std::string& name, const Piece& piece, double y) {
  double right = 0.0;
  for (const LineCrossing& hit : intersections(flat_outline(piece), {0.0, y}, {1.0, 0.0})) {
    right = std::max(right, hit.point.x);
  }
  return {name, Path::through({{0.0, y}, {right, y}})};
}

inline Path sample_armhole(Point underarm, Point pitch, Point shoulder_point, Vec arriving) {
  Path path;
  path.add(corner_curve(underarm, {-1.0, 0.0}, pitch, {0.0, 1.0}, 0.58));
  path.add(fair_curve(pitch, {0.0, 1.0}, shoulder_point, arriving));
  return path;
}

inline Piece sample_front() {
  Piece piece;
  piece.name = "front";
  piece.kind = &kBodiceFront;
  const Point bust = {92.0, 150.0}, side_neck = {66.0, 400.0}, front_neck = {0.0, 318.0};
  const Point underarm = {262.0, 196.0}, side_waist = {238.0, 8.0};
  const Vec down = direction(Angle::degrees(-21.0));
  const Angle open = Angle::degrees(16.0);
  const Point inner = side_neck + 45.0 * down;
  const Point outer = rotated_about(inner, bust, -open);
  const Vec outer_down = rotated(down, -open);
  const Point shoulder_point = outer + 77.0 * outer_down;

  Dart shoulder = sample_dart("shoulder", "shoulder", bust, outer, open, 50.0, false, down);
  const Point waist_inner = {75.0, -4.0};
  Dart waist = sample_dart("waist", "waist", bust, waist_inner, Angle::degrees(14.0), 20.0, true,
                           {1.0, 0.0});
  Path waist_path;
  waist_path.add(CubicCurve{{0.0, 0.0}, {25.0, 0.0}, {50.0, -4.0}, waist_inner});
  add_mouth(waist_path, waist);
  waist_path.add(CubicCurve{waist.legs[1], {155.0, -2.0}, {198.0, 4.0}, side_waist});
  Path shoulder_path = Path::through({shoulder_point, outer});
  add_mouth(shoulder_path, shoulder);
  shoulder_path.add(Segment{shoulder.legs[1], side_neck});

  piece.edges = {{"waist", EdgeRole::Hem, waist_path},
                 {"side", EdgeRole::Seam, Path::through({side_waist, underarm})},
                 {"armhole", EdgeRole::FreeEdge,
                  sample_armhole(underarm, {203.0, 245.0}, shoulder_point, left_of(outer_down))},
                 {"shoulder", EdgeRole::Seam, shoulder_path},
                 {"neckline", EdgeRole::FreeEdge,
                  Path({corner_curve(side_neck, right_of(down), front_neck, {-1.0, 0.0}, 0.6)})},
                 {"centre_front", EdgeRole::Fold, Path::through({front_neck, {0.0, 0.0}})}};
  piece.darts = {shoulder, waist};
  piece.notches = {{"armhole.front", "armhole", 95.0, 1, "", ""},
                   {"side.match", "side", 90.0, 1, "back", "side"}};
  piece.landmarks = {{"bust_point", bust},
                     {"side_neck_point", side_neck},
                     {"shoulder_point", shoulder_point},
                     {"front_neck_point", front_neck},
                     {"underarm_point", underarm}};
  piece.grainline = {{40.0, 50.0}, {40.0, 270.0}};
  piece.cut_on = CutOn::Fold;
  piece.balance_lines = {sample_level("bust_line", piece, 150.0),
                         sample_level("waist_line", piece, 0.5),
                         sample_level("across_front_line", piece, 255.0)};
  return piece;
}

inline Piece sample_back() {
  Piece piece;
  piece.name = "back";
  piece.kind = &kBodiceBack;
  const Point blade = {112.0, 330.0}, side_neck = {72.0, 430.0}, nape = {0.0, 409.0};
  const Point underarm = {236.0, 204.0}, side_waist = {212.0, 8.0};
  const Vec down = direction(Angle::degrees(-19.0));
  const Angle open = Angle::degrees(9.0);
  const Point inner = side_neck + 50.0 * down;
  const Point outer = rotated_about(inner, blade, -open);
  const Vec outer_down = rotated(down, -open);
  const Point shoulder_point = outer + 74.0 * outer_down;

  Dart shoulder = sample_dart("shoulder", "shoulder", blade, outer, open, 10.0, false, down);
  Dart first = sample_dart("waist_1", "waist", {70.0, 150.0}, {60.0, 1.0}, Angle::degrees(7.5), 0.0,
                           true, {1.0, 0.0});
  Dart second = sample_dart("waist_2", "waist", {140.0, 150.0}, {131.0, 3.0}, Angle::degrees(7.0),
                            0.0, true, {1.0, 0.0});
  Path waist_path = Path::through({{0.0, 0.0}, first.legs[0]});
  add_mouth(waist_path, first);
  waist_path.add(Segment{first.legs[1], second.legs[0]});
  add_mouth(waist_path, second);
  waist_path.add(Segment{second.legs[1], side_waist});
  Path shoulder_path = Path::through({shoulder_point, outer});
  add_mouth(shoulder_path, shoulder);
  shoulder_path.add(Segment{shoulder.legs[1], side_neck});

  piece.edges = {{"waist", EdgeRole::Hem, waist_path},
                 {"side", EdgeRole::Seam, Path::through({side_waist, underarm})},
                 {"armhole", EdgeRole::FreeEdge,
                  sample_armhole(underarm, {188.0, 262.0}, shoulder_point, left_of(outer_down))},
                 {"shoulder", EdgeRole::Seam, shoulder_path},
                 {"neckline", EdgeRole::FreeEdge,
                  Path({corner_curve(side_neck, right_of(down), nape, {-1.0, 0.0}, 0.6)})},
                 {"centre_back", EdgeRole::Opening, Path::through({nape, {0.0, 0.0}})}};
  piece.darts = {shoulder, first, second};
  piece.notches = {{"armhole.back", "armhole", 100.0, 2, "", ""},
                   {"side.match", "side", 90.0, 1, "front", "side"}};
  piece.landmarks = {{"side_neck_point", side_neck},
                     {"shoulder_point", shoulder_point},
                     {"nape", nape},
                     {"underarm_point", underarm}};
  piece.grainline = {{36.0, 60.0}, {36.0, 340.0}};
  piece.cut_on = CutOn::Pair;
  piece.balance_lines = {sample_level("bust_line", piece, 150.0),
                         sample_level("waist_line", piece, 0.0),
                         sample_level("across_back_line", piece, 300.0)};
  return piece;
}

inline Pattern sample_pattern() {
  return {{sample_front(), sample_back()},
          {{"side", {{"front", "side"}}, {{"back", "side"}}, 0.0},
           {"shoulder", {{"back", "shoulder"}}, {{"front", "shoulder"}}, 0.0}}};
}

inline Point scaled(Point p, double by) { return {by * p.x, by * p.y}; }

inline Path scaled(const Path& path, double by) {
  Path result;
  for (const Curve& curve : path.curves()) {
    if (const auto* s = std::get_if<Segment>(&curve)) {
      result.add(Segment{scaled(s->a, by), scaled(s->b, by)});
    } else {
      const auto& c = std::get<CubicCurve>(curve);
      result.add(
          CubicCurve{scaled(c.p0, by), scaled(c.p1, by), scaled(c.p2, by), scaled(c.p3, by)});
    }
  }
  return result;
}

// The same pieces larger or smaller, as for another person.
inline Pattern scaled(Pattern pattern, double by) {
  for (Piece& piece : pattern.pieces) {
    for (Edge& edge : piece.edges) edge.path = scaled(edge.path, by);
    for (Dart& dart : piece.darts) {
      for (Point* p : {&dart.apex, &dart.point, &dart.legs[0], &dart.legs[1], &dart.peak}) {
        *p = scaled(*p, by);
      }
    }
    for (Notch& notch : piece.notches) notch.along *= by;
    for (BalanceLine& line : piece.balance_lines) line.path = scaled(line.path, by);
    for (Landmark& landmark : piece.landmarks) landmark.at = scaled(landmark.at, by);
    piece.grainline = {scaled(piece.grainline.a, by), scaled(piece.grainline.b, by)};
  }
  return pattern;
}

}  // namespace blockwright_tests
