#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// An edge that was blended where a dart opens on it.
struct BlendedEdge {
  std::string piece;
  std::string edge;
  std::string dart;
  Angle kink;          ///< that the seam would have had across the closed dart
  double moved = 0.0;  ///< largest distance of the new line from the old one, mm
};

struct TruedPattern {
  Pattern pattern;
  std::vector<BlendedEdge> blended;  ///< kinks of less than 0.01 degrees are left out
};

/// A seam is blended over at most this length to either side of a closed dart, in mm; what lies
/// further off keeps its line. Our choice: about what a drafter's curve reaches.
inline constexpr double kBlendingReach = 60.0;
/// A sharper turn than this across a dart closed to its apex is a corner that was meant, and is
/// left.
inline constexpr Angle kMostKink = Angle::degrees(20.0);

/// The last step before pieces are printed: every dart is folded along the legs as they will be
/// stitched, from its dart point, and pressed to its side.
///
/// 1. A stitched dart ends short of its apex, so its legs close by a little more than the apex's
///    angle, and a seam that was smooth gets a small hollow there. The seam is blended across the
///    closed dart: leg ends stay, directions at the mouth meet half way.
/// 2. The mouth follows the seam through the folded dart: on the inner side the seam is led on as
///    its mirror image in the stitched leg, as far as the fold on the dart's centre line, where the
///    peak lies; on the outer side that line's mirror image in the centre line. For a straight
///    seam square to the dart the peak lies at leg / cos(angle / 2) from the dart point.
///
/// Guarantees: legs are equal; the closed seam is smooth to 1e-6 degrees; on drafted blocks a line
/// moves by less than 2 mm (3 at a dart over kWidestDart), a seam's length changes by less than
/// 0.05 mm and a hem's by less than 0.6; nothing moves but the two stretches next to a mouth. Not
/// for a pattern whose darts are to be moved again: keep the untrued one for that. Cost: some tens
/// of microseconds a dart. Source: common practice, no source (fold, cut through, unfold); the
/// closed form of the peak is plane geometry, checked in tests/reference.
TruedPattern true_darts(const Pattern& pattern);

/// The same for one piece; what was blended is not returned.
Piece true_darts(const Piece& piece);

/// The first broken invariant of a piece as it is, or as it is printed, its darts trued;
/// nothing if it is whole in both. No step may leave a piece that is not.
std::optional<Problem> find_problem_on_paper(const Piece& piece);

}  // namespace blockwright
