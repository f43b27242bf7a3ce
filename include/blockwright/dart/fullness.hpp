#pragma once

#include "blockwright/dart/pivot.hpp"

#include <string>

namespace blockwright {

/// A dart that is not sewn: its mouth stays open and is taken up over a length of its edge, as
/// gathers or as ease.
struct GatherMove {
  std::string dart;
  Fullness::Kind kind = Fullness::Kind::Gathers;
  /// Length of the seam, drawn up, that the fullness is spread over, in mm: half of it to either
  /// side of the dart, less where the edge ends or another mouth begins.
  double over = 80.0;
};

/// Ease that cloth can hide: 8 mm on a seam, 13 mm along an armhole. Common practice, no source.
inline constexpr double kMostEase = 8.0;
inline constexpr double kMostArmholeEase = 13.0;

/// The edge is redrawn over the span in one fair curve that leaves and meets it in its directions;
/// it sews to the same length as before. Notches mark both ends, on the seam's other edge too.
/// Throws "dart.unknown"; "dart.ease" (more than cloth can hide: gather it); "dart.place" (`over`
/// not from 10 to 400 mm, or no room).
MovedDarts gather(const Pattern& pattern, const GatherMove& move);

/// Fullness without a dart: the piece is slashed from one place of its edge to another and spread.
struct SpreadMove {
  std::string from;      ///< where it opens: "front.waist:0.5"
  std::string to;        ///< where it hinges, or opens as much: "front.shoulder:0.5"
  double by = 20.0;      ///< mm at `from`, over all lines, 1 to 300
  int lines = 1;         ///< slashes side by side, 1 to 12
  double apart = 20.0;   ///< mm between slashes, 5 to 100
  bool hinged = true;    ///< false: both ends open by the same width
  bool gathered = true;  ///< false: the edges are left longer (flare)
  double over = 80.0;    ///< mm beyond the outermost slashes, half to either side, that are redrawn
};

/// Between the slashes nothing changes its length or angle; the part with the centre waist stays.
/// An edge that opened is redrawn in one fair curve, one that hinged is blended. Not hinged, the
/// outer part moves square to the slash. Throws as pivot(), and "dart.place" for amounts out of
/// range.
MovedDarts slash_and_spread(const Pattern& pattern, const SpreadMove& move);

}  // namespace blockwright
