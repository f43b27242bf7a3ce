#pragma once

#include "blockwright/garment/cloth.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "blockwright/text/units.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// The pieces of a garment that are cut from a material, by the lines that they are cut along.
std::vector<ClothPiece> cloth_pieces(const Pattern& pattern, Material material);

/// What cloth to buy, one line for each width that it is sold in, and of how much of what else;
/// then what is counted.
std::vector<std::string> cloth_lines(const Pattern& pattern, Unit unit);

}  // namespace blockwright
