#pragma once

#include "new_tape_steps.hpp"

#include <string_view>
#include <vector>

namespace blockwright {

/// A length of the block that shows a correction, and how far the newer tape moves it that way; mm
/// or degrees of the measurement that the correction doubts.
struct Shown {
  std::string_view length;
  Measure by;
};

/// A correction that is applied in full though the tape has changed that way, or some of the block.
struct InFull {
  std::size_t correction = 0;
  TapeStep step;  ///< what the tape has of it
  MeasurementName name;
  Measure asked;
  std::vector<Shown> shown;  ///< on one of them is none of it; empty: it is of one side
};
/// Those for which the file does not say what becomes of them and the tape or the block has changed
/// by more than two tapes differ.
std::vector<InFull> in_full_after_new_tape(const BlockSource& source,
                                           const std::vector<NumberedCorrection>& corrections);

}  // namespace blockwright
