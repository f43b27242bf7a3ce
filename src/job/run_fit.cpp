#include "block_pass.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/fit_words.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/symptom_search.hpp"
#include "drawings.hpp"
#include "fit_corrections.hpp"
#include "fit_picture.hpp"
#include "fit_reports.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <algorithm>

namespace blockwright {
namespace {

FittingOf fitting_of(const FitJob& job, const Client& client) {
  FittingOf fitting{job.date, job.toile, job.by, job.note};
  if (!client.fittings.empty()) {
    const Fitting& newest = client.fittings.back();
    if (fitting.date.empty()) fitting.date = newest.date;
    if (fitting.toile == 0) fitting.toile = newest.toile;
  }
  if (fitting.date.empty()) {
    refuse_option("--date", "the file has no fitting yet, and none was named",
                  "give its date and toile: --date 2026-03-21 --toile 1");
  }
  if (fitting.toile == 0) fitting.toile = 1;
  return fitting;
}

/// Where there is no such correction, those that the words may mean are named.
Problem with_near_words(Problem problem, const NewCorrection& correction,
                        const std::string& words) {
  if (find_correction_words(correction.action, correction.place) != nullptr) return problem;
  std::string near;
  for (const FoundCorrection& found : find_corrections(words).best) {
    near += (near.empty() ? "" : ", ") + std::string(found.words->action) + " " +
            std::string(found.words->place);
  }
  if (!near.empty()) problem.hint += "; by its words it may be: " + near;
  return problem;
}

/// The reader's cures speak of keys of the file; at the command line they are options.
[[noreturn]] void rethrow_for_options(Problem problem) {
  for (const std::string& key : problem.options) {
    if (has_option(Command::Fit, key)) problem.hint += "; at the command line: --" + key;
  }
  throw InputError(problem);
}

std::string with_one_more(const std::string& text, const FitJob& job, std::size_t item) {
  const Client client = client_in(text, job);
  const NewCorrection correction = correction_of(job, item, client.unit);
  try {
    return with_correction({text, job.client}, fitting_of(job, client), correction);
  } catch (const InputError& error) {
    rethrow_for_options(with_near_words(error.problem(), correction, job.add[item]));
  }
}

/// What asked for a change: an option, or an item of its list.
struct AskedBy {
  std::string option;
  std::size_t item = 0;
};

/// What is wrong with a correction may have been said by an option of its own: where "date to be
/// added" is refused, by --date.
AskedBy at_fault(const AskedBy& asked, const std::string& where, const OptionPlaces& places) {
  for (const std::string key : {"date", "note", "as", "side", "seen"}) {
    if (where.ends_with(" " + key + " to be added") && places.contains("--" + key)) {
      return {"--" + key, asked.item};
    }
  }
  return asked;
}

/// A change to the client file. Where it was asked for in a job file, a refusal begins with its
/// place there.
std::string changed(const FitJob& job, const AskedBy& asked, const auto& change) {
  try {
    return change();
  } catch (const InputError& error) {
    Problem problem = error.problem();
    const AskedBy fault = at_fault(asked, problem.where, job.places);
    if (job.places.contains(fault.option)) {
      problem.where = place_of(fault.option, job.places, fault.item) + ": " + problem.where;
    }
    throw InputError(problem);
  }
}

bool changes_file(const FitJob& job) {
  return !job.add.empty() || !job.undo.empty() || !job.redo.empty();
}

std::string edited(const FitJob& job, std::string text) {
  if (changes_file(job)) (void)client_in(text, job);  // what is wrong with it, no option asked for
  for (std::size_t i = 0; i < job.add.size(); ++i) {
    text = changed(job, {"--add", i}, [&] { return with_one_more(text, job, i); });
  }
  const auto number = [](int n) { return static_cast<std::size_t>(n); };
  for (std::size_t i = 0; i < job.undo.size(); ++i) {
    text = changed(job, {"--undo", i}, [&] {
      return with_withdrawn({text, job.client}, number(job.undo[i]));
    });
  }
  for (std::size_t i = 0; i < job.redo.size(); ++i) {
    text = changed(job, {"--redo", i}, [&] {
      return with_active({text, job.client}, number(job.redo[i]));
    });
  }
  return text;
}

/// Of two who change one file at the same time, one would lose what she wrote. The file is read
/// first, so that no folder is made for one that is not there.
FolderLock held_for_change(const FitJob& job, FileStore& files) {
  if (!changes_file(job)) return {};
  (void)files.read(job.client);
  FolderLock held;
  in_its_place([&] { held = files.lock(folder_of(job.client)); });
  return held;
}

std::string report_text(const FitJob& job, const FittingReport& report) {
  if (job.report == ReportKind::Json) return fitting_json(report);
  return job.list ? story_text(report) : fitting_text(report);
}

JobResult fit(const FitJob& job, FileStore& files) {
  judge(job);
  (void)print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  const auto held = held_for_change(job, files);
  const std::string before = files.read(job.client);
  const std::string after = edited(job, before);
  // Drawn before the file is touched: a correction that cannot be applied is not written.
  const BlockRun run = fitted_block(block_source(after, job, job.session));
  JobResult result;
  FittingReport report = fitting_report_of(run);
  result.problems = report.problems;
  if (has_errors(run.problems)) {
    result.exit_code = 1;
  } else {
    const ClientTexts texts{before, after};
    result.files = write_fitting(job, texts, fit_pictures(job, texts, run), files);
    report.files = result.files;
  }
  result.output = report_text(job, report);
  return result;
}

/// The answers to --ask "armhole digs in"; nothing is changed.
JobResult answered(const FitJob& job, FileStore& files) {
  judge(job);
  if (changes_file(job)) {
    refuse_option("--ask", "it finds corrections, and others are to be added or withdrawn",
                  "do one after the other");
  }
  const Unit unit = job.unit.value_or(unit_of_client(job.client, files));
  JobResult result;
  result.output =
      job.report == ReportKind::Json ? answers_json(*job.ask, unit) : asked_text(job, unit);
  return result;
}

/// What a preview has to ask for again: the key that is refused, and the amount where the block
/// cannot take it.
std::string fault_of(const Problem& problem) {
  for (const char* const key : {"date", "toile", "as", "side"}) {
    if (problem.where.ends_with(std::string(" ") + key + " to be added")) return key;
    if (problem.where == std::string("--") + key) return key;
  }
  if (problem.code == "client.order") return "fitting";
  if (problem.code == "client.amount") return "as";
  if (problem.code == "fit.side_missing" || problem.code == "client.missing") return "side";
  const bool of_amount = problem.where.ends_with(" by to be added") ||
                         problem.code.starts_with("fit.") || problem.where == "--add";
  return of_amount ? "amount" : "";
}

FitPreview refused_preview(const Problem& problem) { return {{problem}, "", fault_of(problem)}; }

}  // namespace

FitPreview preview_fit(const FitJob& job, FileStore& files) {
  try {
    judge(job);
    const std::string before = files.read(job.client);
    const BlockRun with_it = fitted_block(block_source(edited(job, before), job, job.session));
    if (has_errors(with_it.problems)) {
      return refused_preview(worded(with_it.problems.front(), with_it.unit));
    }
    const BlockRun without = fitted_block(block_source(before, job, job.session));
    FitPreview preview;
    for (const Problem& problem : worded(with_it.problems, with_it.unit)) {
      const bool was = std::ranges::count(worded(without.problems, without.unit), problem) > 0;
      if (!was && problem.severity == Severity::Warning) preview.problems.push_back(problem);
    }
    preview.does = what_it_does(without, with_it);
    return preview;
  } catch (const Error& error) {
    return refused_preview(error.problem());
  }
}

JobResult run_fit(const FitJob& job, FileStore& files) {
  const bool asks = job.ask && !job.ask->empty();
  return guarded(job.client, job.report, job.places,
                 [&] { return asks ? answered(job, files) : fit(job, files); });
}

Unit unit_of_client(const std::string& path, FileStore& files) {
  ClientJob job;
  job.client = path;
  return client_in(files.read(path), job).unit;
}

NewestFitting newest_fitting(const std::string& path, FileStore& files) {
  ClientJob job;
  job.client = path;
  const Client client = client_in(files.read(path), job);
  if (client.fittings.empty()) return {};
  return {client.fittings.back().date, client.fittings.back().toile};
}

}  // namespace blockwright
