#pragma once

#include "block_pass.hpp"

#include <optional>
#include <vector>

namespace blockwright {

/// The block with the corrections applied, as far as a newer tape leaves something of them; words
/// of a refusal in the person's unit. Requires: a drafted block without errors. Throws InputError
/// for the first correction, in the order of the list, with which those before it can no longer be
/// applied: the refusal names the most of it that this block takes, where there is one.
BlockRun with_corrections(const BlockRun& drafted,
                          const std::vector<NumberedCorrection>& corrections);

/// Whether with_corrections() and all checks let the corrections pass.
bool takes(const BlockRun& drafted, const std::vector<NumberedCorrection>& corrections);

/// How much of the last correction the block takes beside the others: the largest amount below its
/// own, in the steps of a tape in her unit (as_printed()), with which takes() holds, where one step
/// more is refused. Nothing where not even one step is taken. Requires: at least one correction.
/// Cost: about seven times that of applying them.
std::optional<Length> most_taken(const BlockRun& drafted,
                                 std::vector<NumberedCorrection> corrections);

/// "raise underarm 6.3 cm", "take in waist 9.8 cm per half": what to type for so much of it.
std::string words_with_amount(const Correction& correction, Length by, Unit unit);

}  // namespace blockwright
