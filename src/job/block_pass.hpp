#pragma once

#include "block_run.hpp"
#include "blockwright/job/job.hpp"

#include <string_view>

namespace blockwright {

/// Appends problems to problems.
void add(Problems& problems, const Problems& more);
/// Errors before warnings before notes, else in the order found.
void errors_first(Problems& problems);

/// A taped set that no rule could reconcile shows as faults of the pieces. The maker needs to know
/// what to take again: puts a "draft.contradiction" first that names the measurements that were
/// judged doubtful and those that a bound changed.
void name_contradictions(BlockRun& run);

/// Bust girth less underbust girth, mm.
double cup_of(const Body& body);

/// What is broken of a block's pieces as they will be printed, their darts trued: far
/// contradictions may show there alone.
Problems faults_on_paper(const Pattern& block);

/// A client read from the text of her file; without her name where the job wants none. Throws
/// InputError.
Client client_in(const std::string& text, const std::string& path, const ClientJob& job);

/// All corrections, numbered from 1 over all fittings of the file.
std::vector<NumberedCorrection> numbered_corrections(const Client& client);
/// Those that are not withdrawn. With a
/// toile, only those of the toiles before it: what that toile was cut from.
std::vector<NumberedCorrection> active_corrections(const Client& client, int before_toile = 0);

/// The passes up to a checked and fitted block, in running order: fill in, draft, check, correct.
/// Requires of the session that it is one of the client's.
BlockRun fitted_block(const Client& client, const std::string& file, const Session& session,
                      Unit unit, int before_toile = 0);

/// The same of a job.
BlockRun fitted_block(const Job& job, FileStore& files);

}  // namespace blockwright
