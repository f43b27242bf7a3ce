#pragma once

#include <string>
#include <string_view>

namespace blockwright {

/// A paper to print on. Roll paper has a width and takes the length it needs.
struct Paper {
  std::string name;       ///< "a4", "letter", "roll:914", "300x400"
  double width = 210.0;   ///< mm, portrait
  double height = 297.0;  ///< mm; 0 for roll paper
  [[nodiscard]] bool is_roll() const { return height == 0.0; }
};

/// Reads a paper's name: a4 a3 a2 a1 a0 letter legal tabloid roll:WIDTH WIDTHxHEIGHT (mm; both at
/// least 100 and at most 5000). Throws UsageError "paper.unknown" otherwise.
/// Sources: ISO 216; ANSI/ASME Y14.1 (from memory).
Paper paper_named(std::string_view name);

}  // namespace blockwright
