#pragma once

#include "blockwright/style/style.hpp"
#include "bytes.hpp"

namespace blockwright_fuzz {

/// A step that moves darts or draws edges of those pieces, with values that can be meant or not.
blockwright::StyleStep some_step(Bytes& bytes, const blockwright::Pattern& pattern);

/// A step that finishes edges of those pieces.
blockwright::StyleStep some_finishing(Bytes& bytes, const blockwright::Pattern& pattern);

}  // namespace blockwright_fuzz
