#pragma once

#include "blockwright/block/dart_position.hpp"

#include <vector>

namespace blockwright {

/// The waist edge of a block: square to the centre, to every dart leg and to the side seam, bending
/// one way between them.

/// The front waist dips this far under the bust point. Common practice, the number is ours.
inline constexpr double kFrontWaistDip = 5.0;
/// How what is lost between bust line and waist is shared: each side edge, the front dart; the rest
/// goes to the back. About 24 : 35 : 41; common practice, no source (textbooks range over 15-25 at
/// the side, 40-50 in front, from memory).
inline constexpr double kSideShare = 0.12;
inline constexpr double kFrontDartShare = 0.35;

/// A dart on the waist edge, standing upright: legs either side of the vertical under its apex.
struct WaistDart {
  Point apex;
  Point inner_leg;
  Point outer_leg;
  Angle angle;
};

/// A waist edge from the centre waist to the side waist point, with its darts.
struct WaistEdge {
  std::vector<WaistDart> darts;  ///< from centre to side
  std::vector<Path> stretches;   ///< what is sewn: one more than darts
  Point side_waist;
  double given_back = 0.0;  ///< on the bust line, for what darts take out of it that reach above it
};

/// A stretch between two points whose end slopes (radians from level) are given.
CubicCurve waist_stretch(Point from, double slope_from, Point to, double slope_to);
/// How much higher a stretch must end than it starts so that it bends evenly and one way: its width
/// times the tangent of the mean slope.
double waist_rise(double width, double slope_from, double slope_to);
/// Over how much of its width a waist without a dart, from `from_x` to the side, bends.
double undarted_bend(double from_x, double side_x, double over_side_waist);
/// A stretch without a dart from `from` to the side: level, then bent over its last part so that it
/// meets the side seam square.
Path undarted_stretch(Point from, double side_x, double side_slope, double bend);
/// Length of the edge with its darts closed, in mm.
double sewn_length(const WaistEdge& edge);

/// A waist edge as one path, across its darts' peaks, and its darts as pattern darts.
struct WaistWithDarts {
  Path path;
  std::vector<Dart> darts;
};
/// The darts are named and pressed as the position is; a second one is the "outer", a third the
/// one at the "side".
WaistWithDarts waist_with_darts(const DartPosition& position, const WaistEdge& edge,
                                double hold_back);

/// How much of a level line at height y an upright waist dart takes up as it is stitched: nothing
/// from its point up.
double taken_at_level(const Dart& dart, double y);

}  // namespace blockwright
