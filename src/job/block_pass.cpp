#include "block_pass.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/tape_changes.hpp"
#include "blockwright/text/units.hpp"
#include "most_taken.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <sstream>

namespace blockwright {
namespace {

/// Stands where the client's name would, on the paper and in the report.
constexpr const char* kNoName = "(no name)";

/// Where nothing can be drawn, it is said of which file.
void name_file_in_errors(BlockRun& run) {
  for (Problem& problem : run.problems) {
    if (problem.severity == Severity::Error) problem.where = run.file + ": " + problem.where;
  }
}

bool passes_nothing_seen(const Problem& problem, Unit unit) {
  const auto& [least, most, value] = problem.limit;
  if (!most || !value || most->is_angle()) return false;
  return length_text(value->length(), unit) == length_text(most->length(), unit);
}

/// Lengths that moved together since the session before, which no body does. What else changed is
/// told by `tape --check`.
Problems level_changes(const BlockRun& run) {
  const Session* earlier = session_taken_before(run.client, run.session);
  if (earlier == nullptr) return {};
  Problems changed = judge_changes(*earlier, run.session);
  std::erase_if(changed, [](const Problem& p) { return p.severity == Severity::Note; });
  return changed;
}

std::vector<Correction> plain(const std::vector<NumberedCorrection>& numbered) {
  std::vector<Correction> corrections;
  corrections.reserve(numbered.size());
  for (const NumberedCorrection& one : numbered) corrections.push_back(one.correction);
  return corrections;
}

/// One in its words, several by their numbers: "lower underarm", "no. 2, 5 and 7".
std::string corrections_named(const BlockRun& run, const std::set<std::size_t>& items) {
  if (items.size() == 1)
    return correction_text(run.corrections[*items.begin()].correction, run.unit);
  std::string text = "no. ";
  std::size_t left = items.size();
  for (const std::size_t item : items) {
    text += std::to_string(run.corrections[item].number);
    text += --left > 1 ? ", " : left == 1 ? " and " : "";
  }
  return text;
}

/// What others have moved is to be judged again: said once of all.
Problems voided_judgements(const BlockRun& run) {
  std::set<std::size_t> judged, moved_by;
  for (const OrderedCorrection& one : order_corrections(plain(run.corrections))) {
    if (!one.voids.empty()) moved_by.insert(one.correction);
    judged.insert(one.voids.begin(), one.voids.end());
  }
  if (judged.empty()) return {};
  return {{Severity::Warning, "fit.void", corrections_named(run, judged),
           fmt::format("{} {} moved what {} judged by", corrections_named(run, moved_by),
                       moved_by.size() == 1 ? "has" : "have",
                       judged.size() == 1 ? "this was" : "these were"),
           fmt::format("judge {} again on the next toile", judged.size() == 1 ? "it" : "them")}};
}

}  // namespace

void add(Problems& problems, const Problems& more) {
  problems.insert(problems.end(), more.begin(), more.end());
}

Problems without_unseen(Problems problems, Unit unit) {
  std::erase_if(problems, [&](const Problem& p) { return passes_nothing_seen(p, unit); });
  return problems;
}

void errors_first(Problems& problems) {
  std::ranges::stable_sort(problems, std::ranges::greater(), &Problem::severity);
}

void name_contradictions(BlockRun& run) {
  const auto is_fault = [](const Problem& p) {
    return p.severity == Severity::Error && p.code != "check.armhole" && p.code != "draft.adjusted";
  };
  if (std::none_of(run.problems.begin(), run.problems.end(), is_fault)) return;
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (std::ranges::find(names, name) == names.end()) names.push_back(name);
  };
  for (const Problem& p : run.problems) {
    if (p.code.starts_with("measure.")) std::ranges::for_each(p.measurements, add);
  }
  for (const Adjustment& a : run.block.adjustments) add(std::string(info(a.name).key));
  for (const MeasureBack& row : run.checks.measure_back) {
    if (names.empty() && row.source == Source::Taped) add(std::string(info(row.name).key));
  }
  run.problems.insert(
      run.problems.begin(),
      {Severity::Error, "draft.contradiction", fmt::format("{}", fmt::join(names, ", ")),
       "no sound bodice can be drawn from these measurements together",
       "take them again, and look at the eases; if they stay, please report the "
       "client file",
       names});
}

double cup_of(const Body& body) {
  using enum MeasurementName;
  return (body.length(BustGirth) - body.length(UnderbustGirth)).mm();
}

/// Requires: a block that passed its checks, so that its pieces are sound before they are trued.
Problems faults_on_paper(const Pattern& block) {
  Problems faults;
  for (const Piece& piece : block.pieces) {
    if (auto problem = find_problem(true_darts(piece))) faults.push_back(*problem);
  }
  return faults;
}

Client client_in(const std::string& text, const ClientJob& job) {
  std::istringstream in(text);
  Client client = read_client(in, job.client);
  if (job.anonymous) client.name = kNoName;
  return client;
}

std::vector<NumberedCorrection> numbered_corrections(const Client& client) {
  std::vector<NumberedCorrection> all;
  for (const Fitting& fitting : client.fittings) {
    for (const Correction& correction : fitting.corrections) {
      all.push_back({all.size() + 1, fitting.date, fitting.toile, correction});
    }
  }
  return all;
}

std::vector<NumberedCorrection> active_corrections(const Client& client, int before_toile) {
  std::vector<NumberedCorrection> active = numbered_corrections(client);
  std::erase_if(active, [&](const NumberedCorrection& one) {
    return one.correction.withdrawn || (before_toile > 0 && one.toile >= before_toile);
  });
  return active;
}

const Session& session_in(const Client& client, const ClientJob& job, const WantedSession& wanted) {
  constexpr const char* option = "--session";
  std::string where = job.client;
  if (job.places.contains(option)) {
    where = place_of(option, job.places, wanted.item) + ": " + where;
  }
  return session_of(client, wanted.date, where);
}

BlockSource block_source(const std::string& text, const ClientJob& job,
                         const std::string& session) {
  Client client = client_in(text, job);
  const Session& taped = session_in(client, job, {session});
  return {job.client, client, taped, 0, job.unit.value_or(client.unit)};
}

BlockSource block_source(const Job& job, FileStore& files) {
  BlockSource source = block_source(files.read(job.client), job, job.session);
  source.before_toile = job.toile;
  return source;
}

void judge_draft(BlockRun& run) {
  Problems faults = run.checks.problems;
  if (!has_errors(faults)) add(faults, faults_on_paper(run.block.pattern));
  // What cannot be drawn is told with all that may be wrong with the tape.
  const Slips told = has_errors(faults) ? Slips::All : Slips::First;
  run.problems = judge(run.session, run.body, {run.client.unit, told});
  add(run.problems, level_changes(run));
  if (run.block.odd_neck) add(run.problems, judge_neck(run.body, *run.block.odd_neck));
  add(run.problems, faults);
  errors_first(run.problems);
  name_contradictions(run);
  name_file_in_errors(run);
}

void judge_corrected(BlockRun& run) {
  add(run.problems, without_unseen(run.fitted.remarks, run.unit));
  add(run.problems, voided_judgements(run));
  add(run.problems, told_by_new_tape(run));
  add(run.problems, less_than_the_body(run));
  add(run.problems, check_pattern(run.fitted.pattern));
  errors_first(run.problems);
}

void true_for_paper(BlockRun& run) {
  add(run.problems, check_pattern(run.made));
  errors_first(run.problems);
  if (has_errors(run.problems)) return;
  TruedPattern trued = true_darts(run.made);
  run.printed = std::move(trued.pattern);
  run.blended = std::move(trued.blended);
  add(run.problems, check_pattern(run.printed));
  errors_first(run.problems);
}

BlockRun drafted_block(BlockSource source) {
  BlockRun run;
  static_cast<BlockSource&>(run) = std::move(source);
  run.body = fill_in(run.session);
  run.block = draft_block(run.body, Ease::of(run.client));
  run.checks = check_block({run.block.pattern, run.body, run.block.ease, run.block.adjustments});
  judge_draft(run);
  run.fitted.pattern = run.block.pattern;
  return run;
}

BlockRun fitted_block(BlockSource source) {
  BlockRun run = drafted_block(std::move(source));
  if (has_errors(run.problems)) return run;
  const auto active = active_corrections(run.client, run.before_toile);
  if (active.empty()) return run;
  run = with_corrections(run, active);
  judge_corrected(run);
  return run;
}

}  // namespace blockwright
