#pragma once

#include "blockwright/dart/pivot.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// All darts about one point made one. `into` is the dart that takes the others up, or a place as
/// in PivotMove, where it is opened: about the bust point in a front, about the blade point in a
/// back.
struct OneDart {
  std::string into;
  std::optional<double> side_place = {};  ///< as in PivotMove
};

/// A dart whose apex lies further than this from the bust point, in mm, points past the bust. From
/// memory of handbooks: a dart beside another aims within 1.5 to 2.5 cm of it.
inline constexpr double kMostOffBust = 25.0;

/// Every other dart of the same apex is moved into it; then its neighbours on the edge are merged
/// with it, from the nearest on, but for a dart about the bust or blade point. A piece that has but
/// the one dart stays as it is. The angles' sum is kept (1e-9 rad), and lengths as in pivot().
///
/// A second waist dart has an apex of its own: the dart that takes it up no longer turns about the
/// bust point, and is warned of where it points off it by more than kMostOffBust ("dart.off_bust").
///
/// Throws as pivot(), and "dart.unknown" where no dart turns about that point.
MovedDarts one_dart(const Pattern& pattern, const OneDart& move, double cup = kUsualCup);

}  // namespace blockwright
