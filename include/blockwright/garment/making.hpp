#pragma once

#include "blockwright/base/wording.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <vector>

namespace blockwright {

/// What is said beside an edge of a piece.
struct EdgeWords {
  EdgeOf edge;
  Wording words;
};

/// What a garment takes and how it is made, one line each.
struct MakingOf {
  std::vector<Wording> to_cut;  ///< by material
  std::vector<Wording> to_buy;
  std::vector<Wording> to_sew;   ///< in order, without numbers
  std::vector<EdgeWords> edges;  ///< those that open or are bound
};

/// What follows from the pieces, their seams and how their edges are finished. The order is that of
/// the trade: what is sewn flat first, the hem last. Source: common practice, no source.
MakingOf making_of(const Pattern& pattern);

}  // namespace blockwright
