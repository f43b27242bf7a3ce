#pragma once

#include "blockwright/garment/allowances.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <string_view>
#include <vector>

namespace blockwright {

/// The piece of a top's straps, and what a run of a binding calls its two long edges.
inline constexpr std::string_view kStrapPiece = "strap";

bool is_strap(const Piece& piece);
bool has_straps(const Pattern& pattern);
/// Whether the straps are as wide as an edge of the body that they are set on.
bool has_flat_straps(const Pattern& pattern);

/// Both long edges of each strap: of a folded strap they lie on each other and are bound as one.
std::vector<EdgeOf> strap_edges(const Pattern& pattern);

/// Of an edge that is bound, in mm: with darts closed; of a strap between what is sewn in at its
/// ends, and of its two edges, bound as one, the first alone.
double bound_length(const Piece& piece, const Edge& edge);

/// True of an upper edge that ends at the straps and does not run on along them: its strip ends
/// there too.
bool ends_at_straps(const Pattern& pattern, const std::vector<EdgeOf>& edges);

/// A strap is folded, sewn along and turned; its length has in it what is sewn in at its ends.
EdgeFinish strap_finish(const Edge& edge, const Allowances& allowances);

}  // namespace blockwright
