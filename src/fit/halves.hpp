#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "rows.hpp"

#include <optional>

namespace blockwright {

/// Both halves of the body, each drawn as a right half.
struct Halves {
  HalfBlock right;
  std::optional<HalfBlock> own_left;  ///< empty while nothing was done to one of them alone

  [[nodiscard]] bool alike() const { return !own_left; }
  [[nodiscard]] const HalfBlock& left() const { return own_left ? *own_left : right; }
};

Halves halves_of(const Pattern& block);

/// The pattern of both halves: a piece whose halves do not differ stays one piece, others come as
/// right and left, cut 1 each. Says in `remarks` what was unfolded.
Pattern joined(const Halves& halves, const Pattern& block, Problems& remarks);

}  // namespace blockwright
