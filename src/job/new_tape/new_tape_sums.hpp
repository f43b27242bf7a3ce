#pragma once

#include "new_tape_steps.hpp"

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
  /// Those that the tape has changed, by toile; all, where some take back what others ask for.
  std::vector<TapeShare> shares = {};
  std::vector<TapeStep> steps = {};  ///< oldest first
  /// The tape went the way of a correction of which others take back a part, which no tape has.
  bool is_held = false;
  std::vector<TapeShare> others = {};  ///< what those of other measurements change this one by

  [[nodiscard]] Measure asked() const;
  [[nodiscard]] Measure has() const;
  [[nodiscard]] Measure remains() const;
};

/// The sums of all measurements, in the order of the catalogue; those where the tape has changed
/// nothing are left out. A correction that the file says to keep takes no part, nor does one of one
/// side: no tape tells the sides apart.
///
/// What the newer tape has of a correction is what the block drafted from it has, on the lengths
/// that the fitter watched; the tape alone where a session cannot be drafted, and nothing of what
/// it did not tape. What all ask for together is one signed sum; what the tape has is taken off it
/// once: up to all of it, off the corrections that go its way, oldest first. So a correction of
/// which a later one took a part back stands for the rest of it, and of a girth or a width counts
/// what corrections of other measurements change it by, too. A tape of the day of a fitting is
/// newer than its toile where there is an earlier one. Where toiles were cut from several tapes,
/// what the tape had changed by until a later toile was cut is taken off the corrections before
/// that toile alone. So what remains depends on no tape on which nothing was fitted, and of two
/// bodies the smaller never gets the larger block. What is left of a correction below the least
/// amount of its row goes to the next one; the last keeps it.
std::vector<TapeSum> sums_of_new_tape(const BlockSource& source,
                                      const std::vector<NumberedCorrection>& corrections);

/// What remains of the correction, as its own amount is counted. 0: nothing.
Length remaining_amount(const TapeShare& share, const Correction& correction);

/// What the sum says of the correction of that number; nothing if no tape has changed it.
std::optional<TapeShare> share_of(const std::vector<TapeSum>& sums, std::size_t correction);

/// By how much the sum leaves other amounts than the maker has agreed to; before she was asked,
/// than she asked for. 0: nothing is to be said.
Measure not_agreed(const TapeSum& sum, const std::vector<NumberedCorrection>& corrections);

/// Whether that is to be asked about: more than two tapes of one body differ by, or more than half
/// of what was asked for, or of what was agreed to remain of a correction.
bool is_worth_asking(const TapeSum& sum, const std::vector<NumberedCorrection>& corrections);

/// Whether the sum decides what is applied of the correction, and not the file.
bool is_left_to_sum(const Correction& correction);

/// What is applied of a correction, as its own amount is counted, to a block from a newer tape:
/// what the file says, else what the sums leave.
Length amount_to_apply(const std::vector<TapeSum>& sums, const NumberedCorrection& numbered);

/// The corrections as they are applied; what nothing remains of is left out.
std::vector<NumberedCorrection> with_what_remains(const BlockSource& source,
                                                  std::vector<NumberedCorrection> corrections);

}  // namespace blockwright
