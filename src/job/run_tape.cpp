#include "block_pass.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/settled_tape.hpp"
#include "blockwright/report/tape_report.hpp"
#include "blockwright/text/units.hpp"
#include "file_in_words.hpp"
#include "guarded.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

/// A draft that changes so much of what was taped says that something is wrong with it, in mm.
/// Ours: of ordinary tapes across back changes by 9 in the middle (docs/method.md).
constexpr double kChangedByDraft = 20.0;

bool is_changed_much(const BlockRun& run, const std::string& key) {
  return std::ranges::any_of(run.block.adjustments, [&](const Adjustment& one) {
    return info(one.name).key == key && run.body.taped(one.name) &&
           std::abs(one.by.number()) >= kChangedByDraft;
  });
}

/// What the draft finds of the tape where judging finds nothing: what is known to be wrong explains
/// all of it, but not that there is no block.
Problems found_by_draft(const BlockRun& run, bool explained) {
  Problems found;
  if (!explained && run.block.odd_neck) add(found, judge_neck(run.body, *run.block.odd_neck));
  for (const Problem& problem : run.problems) {
    const bool changed = problem.code == "draft.adjusted" && is_changed_much(run, problem.where);
    if (problem.severity == Severity::Error || (changed && !explained)) found.push_back(problem);
  }
  return found;
}

TapeReport judged(const TapeJob& job, const BlockSource& source) {
  const BlockRun run = drafted_block(source);
  const Session* earlier = session_taken_before(source.client, source.session);
  TapeReport report;
  report.file = as_argument(job.client);
  report.client = source.client.name;
  report.session = source.session.date;
  report.body = run.body;
  report.unit = source.unit;
  report.in_full = job.all;
  report.settled = settle_tape(report.body);
  report.take_first =
      block_bands(run.body, spread_of(run.body), Ease::of(source.client), run.block).take_first;
  report.slips = likely_slips(source.session, report.body, source.client.unit);
  report.problems =
      judge(source.session, report.body, {source.client.unit, job.all ? Slips::All : Slips::First});
  if (earlier != nullptr) {
    report.since = earlier->date;
    report.changes = changes_since(*earlier, source.session);
    add(report.problems, judge_changes(*earlier, source.session));
  }
  add(report.problems, found_by_draft(run, !report.problems.empty()));
  report.problems = with_file(worded(report.problems, source.unit), job.client);
  errors_first(report.problems);
  return report;
}

JobResult tape(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  const TapeReport report = judged(job, block_source(files.read(job.client), job, job.date));
  JobResult result;
  result.problems = report.problems;
  result.exit_code = has_errors(report.problems) ? 1 : 0;
  result.output = job.report == ReportKind::Json ? tape_json(report) : tape_text(report);
  return result;
}

}  // namespace

JobResult run_tape(const TapeJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return tape(job, files); });
}

}  // namespace blockwright
