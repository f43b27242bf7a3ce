#pragma once

#include "block_pass.hpp"
#include "blockwright/job/fit_words.hpp"

namespace blockwright {

/// What --ask prints: the answers to what is seen, and how one is added. Requires: `job.ask`.
std::string asked_text(const FitJob& job, const FitAnswers& answers);
std::string answers_json(const std::string& seen, const FitAnswers& answers);

/// What the newest correction does to the girths at bust and waist and to the lengths that its row
/// speaks of, in one line. Requires: `with_it` has one correction more.
std::string what_it_does(const BlockRun& without, const BlockRun& with_it);

}  // namespace blockwright
