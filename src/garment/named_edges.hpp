#pragma once

#include "blockwright/block/kinds.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The edges that "front.side" names: also those of a front_right and front_left, and edges that
/// take the place of that part of the block. Where only the part is named, those of every piece.
/// Empty if there is none.
std::vector<EdgeOf> edges_named(const Pattern& pattern, std::string_view name);

Edge& edge_at(Pattern& pattern, const EdgeOf& at);
const Edge& edge_at(const Pattern& pattern, const EdgeOf& at);

/// "front.side"
std::string name_of(const EdgeOf& at);

/// The names that edges_named() would find, for a refusal: "front.side, front.waist and back.side".
std::string all_edge_names(const Pattern& pattern);

}  // namespace blockwright
