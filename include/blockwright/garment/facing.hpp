#pragma once

#include "blockwright/dart/pivot.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// Edges that are faced: a shaped piece is sewn to the edge and turned inside. Lengths in mm.
struct FacingPlan {
  /// "neckline", "armhole", or "top_edge" for the whole upper edge of a top without shoulders.
  std::vector<std::string> edges = {};
  /// Without it kUsualFacing, or as much as a short shoulder allows.
  std::optional<double> width = {};
  /// How far the facing's edge is cut inside the garment's, so that the seam rolls inside.
  double roll = 2.0;
  bool interfaced = true;
  /// Neckline and armhole in one piece, from the side over the shoulder to the centre.
  bool in_one = false;
};

/// Facings, in mm: narrower they roll out, wider they are no facing. Common practice, no source: 4
/// to 7, usually 5.
inline constexpr double kLeastFacing = 40.0;
inline constexpr double kMostFacing = 70.0;
inline constexpr double kUsualFacing = 50.0;
/// In mm, for thin and for thick cloth. Common practice, no source.
inline constexpr double kLeastRoll = 1.0;
inline constexpr double kMostRoll = 3.0;
/// On the shoulder a facing keeps this far off the other edge, in mm. Ours.
inline constexpr double kFacingOffEdge = 3.0;
/// A facing of neckline and armhole in one piece keeps this far off the bust point, in mm. Common
/// practice, no source.
inline constexpr double kFacingOffBust = 25.0;
/// What the outer edge of a facing is cut with, in mm, to be turned or neatened. Common practice,
/// no source.
inline constexpr double kFacingTurn = 6.0;

/// Traces a facing of each front and back from the finished edge, its darts closed and its panels
/// joined: "front_neck_facing", "back_armhole_facing", "front_top_facing" and so on, with the grain
/// of the part that it lies under. What it is cut with follows the edges that it lies under,
/// whichever of the steps that finish edges comes first.
///
/// A front with buttons whose neckline is faced gets a "front_facing" from the shoulder along
/// neckline and front edge to the hem, in place of the one that is cut on; beside the front edge it
/// is as wide as that was. In one piece, neckline and armhole have a "front_facing" and a
/// "back_facing" from the side over the shoulder, their outer edge an arch over the bust.
///
/// Guarantees: no line of the garment moves. The facing's edge lies `roll` inside the garment's,
/// nothing at a centre that is not on the fold. On a shoulder or side it is as wide as asked,
/// measured along the seam, so that facings are equally long there; elsewhere its outer edge is
/// parallel within 1 mm, but for 60 mm next to its ends and corners, which are rounded, and for the
/// arch of one in one piece. Notches of the edge have mates on the facing; an edge without gets
/// one, double on a back.
///
/// Where the facings of neckline and armhole lie over each other on a shoulder a warning says so.
/// Throws InputError "garment.facing": no edges, a width or roll that cannot be sewn, an edge that
/// is not there, is bound, gathered or faced already, too short a shoulder, or a facing in one
/// piece that comes too near to the bust point, with what can be done.
MovedDarts with_facing(const Pattern& pattern, const FacingPlan& plan);

}  // namespace blockwright
