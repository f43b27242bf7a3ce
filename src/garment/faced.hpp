#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <string_view>

namespace blockwright {

/// The name of the edge of a facing that is sewn to nothing.
inline constexpr const char* kFacingOuterEdge = "outer_edge";

/// The facing of an edge of the garment, or that is a piece; null if there is none.
const Facing* facing_of(const Pattern& pattern, const EdgeOf& edge);
const Facing* facing_named(const Pattern& pattern, std::string_view piece);

/// Gives the edges of facings the roles and finishes of what they lie under.
void follow_garment(Pattern& pattern);

}  // namespace blockwright
