#pragma once

#include "change_drawing.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// What is drawn of the pieces, and the names of what is not.
struct ShownPieces {
  std::vector<ShownChange> shown;
  std::vector<std::string> left_out;
};

/// The changed pieces, the halves of one as they lie on a body seen from their side, centre to
/// centre. Of two halves an unchanged one is left out, so that what changed is larger; beside two
/// pieces that changed everything that did not.
ShownPieces shown_pieces(const ChangePage& page);

/// Where each piece begins in the list, both halves of one counted as one, and where the list ends.
std::vector<std::size_t> begins_of_pieces(const std::vector<ShownChange>& shown);

}  // namespace blockwright
