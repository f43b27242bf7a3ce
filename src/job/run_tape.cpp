#include "block_pass.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/text/units.hpp"
#include "guarded.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

std::string counts_of(const BlockSource& source, const Body& body) {
  const auto& all = measurement_catalogue();
  const auto taped = std::ranges::count_if(all, [&](auto& row) { return body.taped(row.name); });
  const auto estimated = std::ranges::count_if(
      all, [&](auto& row) { return body.has(row.name) && !body.taped(row.name); });
  return fmt::format("{}, session of {}: {} measurements taken, {} estimated.\n",
                     source.client.name, source.session.date, taped, estimated);
}

/// What is doubted, the most doubtful first, and what to do.
std::string doubts_in(const Problems& problems) {
  if (problems.empty())
    return "Nothing in it is unlikely. Only the body shows whether it is right.\n";
  std::string text;
  for (const Problem& problem : problems) text += to_text(problem) + "\n";
  return text;
}

JobResult tape(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  const BlockSource source = block_source(files.read(job.client), job, job.date);
  const Body body = fill_in(source.session);
  JobResult result;
  result.problems = worded(judge(source.session, body, source.unit), source.unit);
  errors_first(result.problems);
  result.output = counts_of(source, body) + doubts_in(result.problems);
  return result;
}

}  // namespace

JobResult run_tape(const TapeJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return tape(job, files); });
}

}  // namespace blockwright
