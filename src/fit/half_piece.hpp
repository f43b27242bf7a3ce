#pragma once

#include "blockwright/dart/opened.hpp"

namespace blockwright {

/// The piece put together again, its landmarks and balance lines where the outline now has them. A
/// piece whose edges and darts are what they were is returned as `before`.
Piece finished_piece(const Opened& open, const Piece& before);

/// True if edges, darts and marks are the same to the last bit.
bool same_shape(const Piece& a, const Piece& b);
bool same_shape(const Opened& a, const Opened& b);

}  // namespace blockwright
