#include "block_pass.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/fit_words.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "drawings.hpp"
#include "fit_corrections.hpp"
#include "fit_picture.hpp"
#include "fit_reports.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <algorithm>

namespace blockwright {
namespace {

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
  judge_most(job, item, text, correction);
  const FittingOf fitting = fitting_of(job, client);
  try {
    std::string changed = with_correction({text, job.client}, fitting, correction);
    judge_date(job, fitting.date, client);
    return changed;
  } catch (const InputError& error) {
    rethrow_for_options(error.problem());
  }
}

/// With who fitted and the note, where no correction brings them.
std::string with_fitting_named(const std::string& text, const FitJob& job) {
  const Client client = client_in(text, job);
  const FittingOf fitting = fitting_of(job, client);
  try {
    std::string changed = with_fitting({text, job.client}, fitting);
    judge_date(job, fitting.date, client);
    return changed;
  } catch (const InputError& error) {
    rethrow_for_options(error.problem());
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
  for (const std::string key : {"date", "toile", "note", "as", "side", "seen"}) {
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

/// Without a correction to add, who fitted and a note are kept all the same.
bool notes_fitting(const FitJob& job) {
  return job.add.empty() && (!job.by.empty() || !job.note.empty());
}

bool changes_file(const FitJob& job) {
  return !job.add.empty() || notes_fitting(job) || !job.undo.empty() || !job.redo.empty();
}

/// What belongs to a correction is not dropped without a word where none is added.
void judge_without_correction(const FitJob& job) {
  if (!job.add.empty()) return;
  const auto refuse = [&](const char* option, const char* more) {
    refuse_option(
        place_of(option, job.places), "it belongs to a correction, and none is added",
        std::string("give the correction with it: --add \"lower front_neck 1.0\"") + more);
  };
  if (!job.seen.empty()) refuse("--seen", "; or --note, for a note on the fitting");
  if (!job.as.empty()) refuse("--as", "");
  if (!job.side.empty()) refuse("--side", "");
}

/// Nor is a fitting that is named, and nothing else.
void judge_named_fitting(const FitJob& job) {
  const bool is_named = !job.date.empty() || job.toile;
  if (!is_named || !job.add.empty() || notes_fitting(job)) return;
  refuse_option(place_of(job.date.empty() ? "--toile" : "--date", job.places),
                "it names a fitting, and nothing is given to be kept with it",
                "give a correction, --add \"lower front_neck 1.0\", or a --note");
}

std::string edited(const FitJob& job, std::string text) {
  if (changes_file(job)) (void)client_in(text, job);  // what is wrong with it, no option asked for
  for (std::size_t i = 0; i < job.add.size(); ++i) {
    text = changed(job, {"--add", i}, [&] { return with_one_more(text, job, i); });
  }
  if (notes_fitting(job)) {
    text = changed(job, {job.note.empty() ? "--by" : "--note"},
                   [&] { return with_fitting_named(text, job); });
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

/// Corrections that were before as --undo or --redo want them.
Problems done_already(const FitJob& job, const std::string& before) {
  const auto corrections = numbered_corrections(client_in(before, job));
  Problems notes;
  const auto note = [&](const std::vector<int>& numbers, bool withdrawn) {
    for (const int number : numbers) {
      const auto item = static_cast<std::size_t>(number) - 1;
      if (item >= corrections.size() || corrections[item].correction.withdrawn != withdrawn)
        continue;
      notes.push_back({Severity::Note, "fit.already", "correction " + std::to_string(number),
                       withdrawn ? "it was withdrawn already; nothing is changed"
                                 : "it was not withdrawn; nothing is changed",
                       "`--list` shows which are withdrawn"});
    }
  };
  note(job.undo, true);
  note(job.redo, false);
  return notes;
}

/// What the draft gave way in is said by `draft`; here of what a correction calls into doubt.
void leave_to_draft(const BlockRun& run, Problems& problems) {
  const auto is_doubted = [&](const Problem& problem) {
    return std::ranges::any_of(run.corrections, [&](const NumberedCorrection& one) {
      const auto& doubts = fitting_row(row_of(one.correction).row).doubts;
      return doubts && std::ranges::count(problem.measurements, info(doubts->name).key) > 0;
    });
  };
  std::erase_if(problems, [&](const Problem& problem) {
    return problem.severity == Severity::Note && problem.code == "draft.adjusted" &&
           !is_doubted(problem);
  });
}

/// Darts that corrections left too narrow to sew: the seam takes them up as ease.
Problems darts_left_narrow(const BlockRun& run) {
  const Problems drafted = hard_to_sew(run.block.pattern);
  Problems narrow = hard_to_sew(run.fitted.pattern);
  std::erase_if(narrow, [&](const Problem& problem) {
    const auto is_same = [&](const Problem& other) {
      return other.code == problem.code && other.where == problem.where;
    };
    return problem.code != "dart.narrow" || std::ranges::any_of(drafted, is_same);
  });
  return narrow;
}

JobResult fit(const FitJob& job, FileStore& files) {
  judge(job);
  judge_without_correction(job);
  judge_named_fitting(job);
  (void)print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  const auto held = held_for_change(job, files);
  const std::string before = files.read(job.client);
  const std::string after = edited(job, before);
  // Drawn before the file is touched: a correction that cannot be applied is not written.
  const BlockRun run = fitted_block(block_source(after, job, job.session));
  JobResult result;
  FittingReport report = fitting_report_of(run);
  leave_to_draft(run, report.problems);
  if (!has_errors(run.problems)) add(report.problems, worded(darts_left_narrow(run), run.unit));
  add(report.problems, done_already(job, before));
  report.ask_command = "blockwright fit " + as_argument(job.client) + " --ask";
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
  judge_without_correction(job);
  if (changes_file(job)) {
    refuse_option("--ask", "it finds corrections, and others are to be added or withdrawn",
                  "do one after the other");
  }
  const Unit unit = job.unit.value_or(unit_of_client(job.client, files));
  const FitAnswers answers = for_her_block(answers_to(*job.ask, unit), places_lacking(job, files));
  JobResult result;
  result.output =
      job.report == ReportKind::Json ? answers_json(*job.ask, answers) : asked_text(job, answers);
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
      if (was || problem.severity != Severity::Warning) continue;
      preview.problems.push_back(problem);
      preview.problems.back().where = place_text(problem.where);
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

std::string why_not_kept(std::string_view seen) {
  const auto fault = fault_of_seen(seen);
  return fault ? fault->message.plain() : "";
}

void judge_before_asking(const FitJob& job, FileStore& files) {
  judge_without_correction(job);
  const std::string text = files.read(job.client);
  in_its_place([&] { (void)files.lock(folder_of(job.client)); });
  const Client client = client_in(text, job);
  const FittingName known = meant_fitting(client, {job.date, job.toile});
  // Another day and toile where they are open: those are judged when they are typed.
  const Fitting* newest = client.fittings.empty() ? nullptr : &client.fittings.back();
  const std::string last = newest == nullptr ? "" : newest->date;
  const int toile = known.toile.value_or(newest == nullptr ? 1 : newest->toile + 1);
  const std::string date =
      known.date.empty() ? std::max(last, client.sessions.back().date) : known.date;
  const bool is_open = known.date.empty() || !known.toile;
  try {
    (void)with_fitting({text, job.client}, {date, toile, job.by, job.note});
  } catch (const InputError& error) {
    if (!is_open || error.problem().code != "client.order") throw;
  }
  judge_date(job, date, client);
}

}  // namespace blockwright
