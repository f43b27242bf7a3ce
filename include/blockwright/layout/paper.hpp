#pragma once

#include "blockwright/base/length.hpp"

#include <algorithm>
#include <string>
#include <string_view>

namespace blockwright {

/// A paper to print on. Roll paper has a width and takes the length it needs.
struct Paper {
  std::string name;                   ///< "a4", "letter", "roll:914", "300x400"
  Length width = Length::mm(210.0);   ///< portrait
  Length height = Length::mm(297.0);  ///< 0 for roll paper
  [[nodiscard]] bool is_roll() const { return height == Length(); }
  [[nodiscard]] Length shorter() const { return is_roll() ? width : std::min(width, height); }
  [[nodiscard]] Length longer() const { return std::max(width, height); }
};

/// Reads a paper's name: a4 a3 a2 a1 a0 letter legal tabloid roll:WIDTH WIDTHxHEIGHT (mm; both at
/// least 100 and at most 5000). Throws UsageError "paper.unknown" otherwise.
/// Sources: ISO 216; ANSI/ASME Y14.1 (from memory).
Paper paper_named(std::string_view name);

}  // namespace blockwright
