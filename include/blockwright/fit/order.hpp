#pragma once

#include "blockwright/measure/fitting.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A correction in the order of work, and what it does to the judgement of the others.
struct OrderedCorrection {
  std::size_t correction = 0;  ///< index in the list
  CorrectionRow row{};
  int stage = 0;
  /// Corrections of the list whose judgement this one makes void: judge them again on the next
  /// toile before they are believed.
  std::vector<std::size_t> voids;
  /// Rows to look at on the next toile because of this one.
  std::vector<CorrectionRow> look_at;
};

/// Sorts by stage, within a stage as given; withdrawn corrections are left out. Throws InputError
/// "fit.unknown" for unknown words.
std::vector<OrderedCorrection> order_corrections(const std::vector<Correction>& corrections);

}  // namespace blockwright
