#pragma once

#include "block_pass.hpp"

#include <optional>
#include <vector>

namespace blockwright {

/// What a newer tape leaves of a correction.
struct TapeShare {
  std::size_t correction = 0;  ///< number in the client file
  double asked = 0.0;          ///< of the measurement: mm, or degrees
  double remains = 0.0;        ///< of what was asked; 0: nothing
};

/// The corrections that ask for a change of one measurement, and how what the tape has changed by
/// since is shared out among them.
struct TapeSum {
  MeasurementName name;
  const Session* since = nullptr;  ///< the session that the first of them was fitted on
  Measure was, is;
  std::vector<TapeShare> shares;  ///< those that the tape has changed, in the order of the file

  [[nodiscard]] Measure asked() const;
  [[nodiscard]] Measure remains() const;
};

/// The sums of all measurements, in the order of the catalogue; those where the tape has changed
/// nothing are left out. A correction that the file says to keep takes no part, nor does one of one
/// side: no tape tells the sides apart.
///
/// Each change of the tape from one session to the next is shared out once, among the corrections
/// of the sessions before it that ask for a change that way, oldest first. It counts if it is at
/// least half of the smallest of them and at most one and a half times what they ask for together:
/// less is what two tapes differ by, more is another body. What is left of a correction below the
/// least amount of its row goes to the next; after the last it is nothing.
std::vector<TapeSum> sums_of_new_tape(const BlockSource& source,
                                      const std::vector<NumberedCorrection>& corrections);

/// What remains of the correction, as its own amount is counted. 0: nothing.
Length remaining_amount(const TapeShare& share, const Correction& correction);

/// What the sum says of the correction of that number; nothing if no tape has changed it.
std::optional<TapeShare> share_of(const std::vector<TapeSum>& sums, std::size_t correction);

/// Whether the file says already what becomes of it: to drop it, or the amount that remains.
bool is_decided(const TapeShare& share, const Correction& correction);

/// The corrections with what the sums leave of them; what nothing remains of is left out.
std::vector<NumberedCorrection> with_what_remains(std::vector<NumberedCorrection> corrections,
                                                  const std::vector<TapeSum>& sums);

}  // namespace blockwright
