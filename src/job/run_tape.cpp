#include "block_pass.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/settled_tape.hpp"
#include "blockwright/report/tape_report.hpp"
#include "blockwright/text/units.hpp"
#include "file_in_words.hpp"
#include "guarded.hpp"

namespace blockwright {
namespace {

std::vector<Retake> take_first_of(const BlockSource& source, const Body& body) {
  const Ease ease = Ease::of(source.client);
  return block_bands(body, spread_of(body), ease, draft_block(body, ease)).take_first;
}

TapeReport judged(const TapeJob& job, const BlockSource& source) {
  const Session* earlier = session_taken_before(source.client, source.session);
  TapeReport report;
  report.file = for_shell(job.client);
  report.client = source.client.name;
  report.session = source.session.date;
  report.body = fill_in(source.session);
  report.unit = source.unit;
  report.in_full = job.all;
  report.settled = settle_tape(report.body);
  report.take_first = take_first_of(source, report.body);
  report.slips = likely_slips(source.session, report.body, source.client.unit);
  report.problems =
      judge(source.session, report.body, {source.client.unit, job.all ? Slips::All : Slips::First});
  if (earlier != nullptr) {
    report.since = earlier->date;
    report.changes = changes_since(*earlier, source.session);
    add(report.problems, judge_changes(*earlier, source.session));
  }
  report.problems = with_file(worded(report.problems, source.unit), job.client);
  errors_first(report.problems);
  return report;
}

JobResult tape(const TapeJob& job, FileStore& files) {
  judge_tape(job);
  const TapeReport report = judged(job, block_source(files.read(job.client), job, job.date));
  JobResult result;
  result.problems = report.problems;
  result.output = job.report == ReportKind::Json ? tape_json(report) : tape_text(report);
  return result;
}

}  // namespace

JobResult run_tape(const TapeJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return tape(job, files); });
}

}  // namespace blockwright
