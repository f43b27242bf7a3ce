#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <set>
#include <string>
#include <string_view>

namespace blockwright {

/// The endings of pieces that are for one side of the body: "front_right", "front_left".
inline constexpr std::string_view kRightEnding = "_right";
inline constexpr std::string_view kLeftEnding = "_left";

/// A piece's name taken apart: "front_left" is "front" and "_left"; of "front" the side is empty.
struct SidedName {
  std::string_view whole;
  std::string_view side;
};
SidedName sided_name(std::string_view name);

/// Pieces are drafted with x from the centre line to the side. Cut with the cloth's right side up,
/// such a front is the wearer's left one and such a back her right one; the other of the two is its
/// mirror image, at negative x. True for such a mirror image and for panels that it was cut into.
bool is_mirrored(const Piece& piece);

/// The piece of the body's other side: mirrored in the line x = 0, its outline anticlockwise again,
/// darts pressed towards the same place of the body. Mirrored twice it is as it was but for
/// rounding (1e-9 mm).
Piece mirrored(const Piece& piece);

/// The pattern with the pieces of these names mirrored; its seams say anew in which order and
/// direction their edges run. Requires: pieces that share a seam all among the
/// names or none.
Pattern with_mirrored(Pattern pattern, const std::set<std::string>& names);

}  // namespace blockwright
