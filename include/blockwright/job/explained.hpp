#pragma once

#include "blockwright/job/job.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A correction of which it is not settled what becomes of it, although a newer tape session
/// already has what it asked for.
struct Explained {
  int number = 0;          ///< in the client file, counted from 1
  std::string correction;  ///< "lower front_neck"
  std::string tapes;       ///< what both sessions took, one sentence
};

/// What becomes of such a correction.
enum class ExplainedAnswer {
  Keep,  ///< it is applied all the same
  Drop,  ///< it is not applied as long as the tape has it
};

struct ExplainedDecision {
  int number = 0;  ///< of the correction
  ExplainedAnswer answer = ExplainedAnswer::Keep;
};

/// The corrections that a run of the job would warn of with "fit.explained", by number. None where
/// the client cannot be read: the run itself tells why.
std::vector<Explained> explained_corrections(const Job& job, FileStore& files);

/// Writes answers into the client file, as "new_tape" beside their corrections; the text before it
/// stands beside with ".bak" behind its name. Nothing is written without an answer. Throws as
/// reading the client, and FileError "file.write".
void decide_explained(const std::string& client, const std::vector<ExplainedDecision>& decisions,
                      FileStore& files);

}  // namespace blockwright
