#pragma once

#include "blockwright/base/error.hpp"
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

/// The piece put together again, its landmarks and balance lines where the outline now has them. A
/// piece whose edges and darts are what they were is returned as `before`.
Piece finished_piece(const Opened& open, const Piece& before);

/// True if edges, darts and marks are the same to the last bit.
bool same_shape(const Opened& a, const Opened& b);

/// A length by its name in Effect.
struct FitLength {
  std::string name;
  double mm = 0.0;
};

/// All lengths of a half and, for whole girths and widths, of the other half with it.
std::vector<FitLength> fit_lengths(const HalfBlock& half, const HalfBlock& other);

/// True for the girths and widths that both halves make together.
bool is_whole(std::string_view name);

}  // namespace blockwright
