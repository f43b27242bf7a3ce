#pragma once

#include "rows.hpp"

#include <string>
#include <vector>

namespace blockwright {

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
