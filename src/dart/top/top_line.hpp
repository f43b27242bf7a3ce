#pragma once

#include "blockwright/dart/top_edge.hpp"
#include "blockwright/geometry/path.hpp"

#include <optional>

namespace blockwright {

/// What the upper edge of half a piece runs between, with the darts that it crosses closed. The
/// edge is drawn from the side to the centre.
struct TopSpan {
  Point side;
  Vec leaving;  ///< square to the side seam
  Point centre;
  Vec arriving;        ///< square to the centre
  Point top;           ///< the middle of the strap, or the highest place over the bust
  Point shoulder;      ///< where the strap goes: the middle of the shoulder that is cut away
  double strap = 0.0;  ///< how long the end is that the strap is set on
};

/// An upper edge in one line, and how far along it the end lies that a strap is set on.
struct TopLine {
  Path path;
  std::optional<Stretch> strap;  ///< none of a strapless top
};

TopLine strapped_front(TopShape shape, const TopSpan& span);
TopLine strapless_front(TopShape shape, const TopSpan& span);
TopLine strapped_back(const TopSpan& span);
TopLine strapless_back(const TopSpan& span);

}  // namespace blockwright
