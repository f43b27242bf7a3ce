#pragma once

#include "blockwright/base/few.hpp"
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

/// Room for the darts of one waist edge.
inline constexpr std::size_t kWaistDartRoom = 3;

/// A waist edge from the centre waist to the side waist point, with its darts.
struct WaistEdge {
  Few<WaistDart, kWaistDartRoom> darts;   ///< from centre to side
  Few<Curve, kWaistDartRoom + 1> curves;  ///< what is sewn: one more than darts; without any, all
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
/// Adds what there is from `from` to the side without a dart: level, then bent over its last part
/// so that it meets the side seam square. It ends at the side waist point.
void add_undarted(WaistEdge& edge, Point from, double side_x, double side_slope, double bend);
/// Length of the edge with its darts closed, in mm; a stretch between darts that overlap counts
/// against it, so that it always falls as the darts take in more.
double sewn_length(const WaistEdge& edge);
/// The edge between its last dart and the side seam.
Path side_stretch(const WaistEdge& edge);

/// A waist edge as one path, across its darts' peaks, and its darts as pattern darts.
struct WaistWithDarts {
  Path path;
  std::vector<Dart> darts;
};
/// The darts are named and pressed as the position is; a second one is the "outer", a third the
/// one at the "side".
WaistWithDarts waist_with_darts(const DartPosition& position, const WaistEdge& edge,
                                double hold_back);

/// How much of a level line at height y a waist dart takes up as it is stitched: nothing from its
/// point up.
double taken_at_level(const Dart& dart, double y);

}  // namespace blockwright
