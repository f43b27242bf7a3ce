#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Edges that are wrapped in strips of bias, folded double.
struct BindingPlan {
  /// Each a list of edges that one strip binds, in the order of sewing: "neckline", "armhole",
  /// "hem", or "front.neckline" for one piece alone.
  std::vector<std::vector<std::string>> runs = {};
  double shows = 7.0;    ///< visible width, in mm
  double stretch = 4.0;  ///< how much shorter than a hollow edge the strip is, in percent
};

/// What can be turned and stitched by hand or foot, in mm of visible width. Ours.
inline constexpr double kLeastBindingWidth = 4.0;
inline constexpr double kMostBindingWidth = 25.0;
/// The most that a strip is stretched before it puckers the edge, in percent. Common practice, no
/// source: 3 to 5.
inline constexpr double kMostStretch = 8.0;

/// Besides four visible widths a strip is so much wider, for the turn of the cloth, in mm. Common
/// practice, no source: 3 to 4.
inline constexpr double kTurnOfCloth = 3.5;
/// What each end of a strip takes to be joined or turned in, in mm. Common practice, no source.
inline constexpr double kStripEnd = 15.0;
/// The area that a square of bias strips takes over the strips themselves, for joins. Computed:
/// 1.1 times.
inline constexpr double kStripWaste = 1.1;

/// Binds the edges: they are cut without allowance, and the pattern says how long and wide each
/// strip is cut, and of which square of cloth. A hollow edge (an armhole, a round neckline) is
/// bound with the strip stretched, others are not. A strip that meets no opening is joined to a
/// ring where it shows least: at the underarm, or at the centre back.
///
/// Guarantees: no line moves. Throws InputError "garment.binding": no runs, a width or stretch that
/// cannot be sewn, an edge that is not there, is sewn to another, lies on the fold, or is in two
/// runs.
MovedDarts with_binding(const Pattern& pattern, const BindingPlan& plan);

/// Side of the square of cloth that yields strips of that length and width, in mm.
struct StripSize {
  double length = 0.0;
  double width = 0.0;
};
double square_for(const StripSize& strips);

/// Side of the square of cloth that yields the strips of all bindings, in mm; 0 without any.
double square_of_strips(const Pattern& pattern);

}  // namespace blockwright
