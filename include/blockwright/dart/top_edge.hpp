#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string_view>

namespace blockwright {

/// How the front of a top runs between its straps, or over the bust of one without.
enum class TopShape {
  Straight,    ///< level from the centre to the strap
  Curved,      ///< hollow between the straps, square to the centre
  Sweetheart,  ///< an arc over each bust to a V at the centre
};

/// The straps of a top, in mm.
struct StrapDesign {
  double width = 20.0;
  double adjust = 35.0;  ///< longer by this, to be tried on and trimmed
};

/// The upper edge of a top without shoulders, in mm. What is left empty is as usual for the shape.
/// At most one of each pair.
struct TopEdgeDesign {
  TopShape shape = TopShape::Curved;
  std::optional<double> over_bust_level;  ///< at the centre front, up from the bust point's level
  std::optional<double> centre_share;     ///< ... of the way from there to the front neck point
  std::optional<double> over_bust_point;  ///< up from it, towards the middle of the shoulder
  std::optional<double> top_share;        ///< ... of that way
  double under_underarm = 0.0;            ///< down along the side seam; less than 0: raised
  double back_depth = 0.0;                ///< of the centre back, below the underarm's level
  /// How high the straps are set at the back, of the way from the underarm's level to the middle of
  /// the shoulder.
  std::optional<double> back_share;
  /// How much nearer to the centre they are set at the back than in front.
  std::optional<double> back_nearer;
  std::optional<StrapDesign> straps;  ///< none: strapless
  /// How much shorter than the flat edge each half of the front becomes, so that it lies close.
  std::optional<double> closer;
};

/// A top edge is raised over the underarm by at most this, in mm. Common practice, no source:
/// higher it cuts into the arm.
inline constexpr double kMostRaised = 10.0;
/// It keeps this far off the middle of the shoulder, in mm. Ours: higher it is no top without
/// shoulders.
inline constexpr double kLeastUnderShoulder = 30.0;
/// A sweetheart falls at least this far from over the bust to the centre, in mm. Ours.
inline constexpr double kLeastFall = 15.0;
/// A strap's middle keeps this far off the centre, in mm. Ours.
inline constexpr double kLeastStrapOffCentre = 30.0;
/// Straps, in mm: from a narrow roll to a wide band. Common practice, no source.
inline constexpr double kLeastStrapWidth = 6.0;
inline constexpr double kMostStrapWidth = 60.0;
/// What a strap is longer by, to be tried on, in mm. Ours.
inline constexpr double kMostAdjust = 100.0;
/// At each end of a strap as much is sewn in, in mm. Common practice, no source.
inline constexpr double kStrapSewnIn = 15.0;
/// The edge of the body that a flat strap is set on.
inline constexpr std::string_view kStrapEnd = "strap_end";
/// A strap as wide as this is set on an end of its own, "strap_end", which stands for the shoulder;
/// a narrower one on the point where neckline and armhole meet. Ours.
inline constexpr double kFlatStrap = 12.0;

/// Cuts shoulders and armholes of fronts and backs away. The new edges are "armhole", from the side
/// to the strap, "strap_end", and "neckline", from the strap to the centre; without straps one
/// "neckline" from the side to the centre. Front and back meet the side seam square, equally far
/// under the underarm, so that the closed edge runs on and the side seam walks.
///
/// Heights are taken from the part of the piece where they lie: in front from bust point, centre
/// and shoulder, at the side along its seam. Darts that the edge crosses are closed as stitched
/// while it is drawn, and end on it; a dart that lies wholly over it goes. A strap moves out beside
/// a dart that would end in it. What the front edge becomes shorter (`closer`) goes into its widest
/// dart.
///
/// With straps a piece "strap" is made, or one for each side of a body whose sides differ.
///
/// Throws InputError "garment.top_edge": a height given twice or off its limits, with the most or
/// least that can be; a dart that would be cut off at its point, gathers in the way, a piece that
/// is cut into panels, a top edge that is drawn already.
MovedDarts draw_top_edge(const Pattern& pattern, const TopEdgeDesign& design);

}  // namespace blockwright
