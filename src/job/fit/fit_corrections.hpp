#pragma once

#include "blockwright/job/fit_words.hpp"
#include "blockwright/measure/client_edit.hpp"

namespace blockwright {

/// The fitting that is meant, of a client (job/fit_words.hpp).
FittingName meant_fitting(const Client& client, FittingName given);

/// The fitting that a job names, or means: with who fitted and the note. Throws UsageError
/// "job.value" where that is open.
FittingOf fitting_of(const FitJob& job, const Client& client);

/// Throws UsageError "job.value" for a date before the first tape session.
void judge_date(const FitJob& job, const std::string& date, const Client& client);

/// The item-th of --add with what belongs to it: its amount as a file of that unit has it, and its
/// own --as, --side and --seen. Throws UsageError "job.value", also where the fitting catalogue has
/// no such correction.
NewCorrection correction_of(const FitJob& job, std::size_t item, Unit file_unit);

/// Throws UsageError "client.range" for one that is more than any correction may be: with the most
/// that the block of that client file takes, where that is less. `added` is the item-th of --add.
void judge_most(const FitJob& job, std::size_t item, const std::string& text,
                const NewCorrection& added);

}  // namespace blockwright
