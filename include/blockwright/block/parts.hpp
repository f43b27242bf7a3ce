#pragma once

#include <cstddef>

namespace blockwright {

/// The corners of a half bodice piece and its edges; each edge starts at the corner above it in the
/// list, in the order of the outline.
enum class Corner : std::size_t {
  CentreWaist,
  SideWaist,
  Underarm,
  ShoulderPoint,
  SideNeck,
  CentreNeck,
};
enum class BlockEdge : std::size_t {
  Waist,
  Side,
  Armhole,
  Shoulder,
  Neckline,
  Centre,
  Other,  ///< an edge that is none of a bodice's
};
/// Where the edge comes in the outline of a half bodice piece.
constexpr std::size_t index_of(BlockEdge edge) { return static_cast<std::size_t>(edge); }

}  // namespace blockwright
