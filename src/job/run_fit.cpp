#include "block_pass.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "drawings.hpp"
#include "fit_picture.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <sstream>

namespace blockwright {
namespace {

/// The item-th of --add: "lower front_neck 1.0", or with spaces for underscores: "take in centre
/// back 1 1/2".
NewCorrection correction_in_words(const FitJob& job, std::size_t item) {
  const std::string& words = job.add[item];
  std::istringstream in(words);
  std::vector<std::string> parts;
  for (std::string part; in >> part;) parts.push_back(part);
  const auto is_number = [](const std::string& part) {
    return part.find_first_not_of("0123456789./") == std::string::npos;
  };
  const auto is_action = [](const std::string& word) {
    return std::ranges::find(correction_actions(), word) != correction_actions().end();
  };
  if (parts.size() > 2 && is_action(parts[0] + "_" + parts[1])) {  // "take in", "let out"
    parts[0] += "_" + parts[1];
    parts.erase(parts.begin() + 1);
  }
  const auto number = std::ranges::find_if(parts, is_number);
  if (parts.size() < 3 || number == parts.end() || number - parts.begin() < 2) {
    refuse_option(place_of("--add", job.places, item),
                  "'" + shown(words) + "' is not an action, a place and an amount",
                  "write for example \"lower front_neck 1.0\"");
  }
  NewCorrection correction;
  correction.action = parts[0];
  correction.place = fmt::format("{}", fmt::join(parts.begin() + 1, number, "_"));
  correction.by = fmt::format("{}", fmt::join(number, parts.end(), " "));
  correction.as = job.as;
  correction.side = job.side.value_or(BodySide::Both);
  correction.seen = job.seen;
  return correction;
}

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

/// The reader's cures speak of keys of the file; at the command line they are options.
[[noreturn]] void rethrow_for_options(const InputError& error) {
  Problem problem = error.problem();
  for (const std::string& key : problem.options) {
    if (has_option(Command::Fit, key)) problem.hint += "; at the command line: --" + key;
  }
  throw InputError(problem);
}

std::string with_one_more(const std::string& text, const FitJob& job, std::size_t item) {
  const NewCorrection correction = correction_in_words(job, item);
  try {
    return with_correction({text, job.client}, fitting_of(job, client_in(text, job)), correction);
  } catch (const InputError& error) {
    rethrow_for_options(error);
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
      return {"--" + key};
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
  result.output = job.report == ReportKind::Json ? fitting_json(report) : fitting_text(report);
  return result;
}

std::string usual_text(const FittingRow& row, Unit unit) {
  const bool inches = unit == Unit::Inch;
  const auto told = [&](Length length) {
    return inches ? inch_fraction(length.inches()) : trimmed(length.cm(), 2);
  };
  return told(row.amount.usual) + (inches ? " in (" : " cm (") + told(row.amount.least) + " to " +
         told(row.amount.most) + ")";
}

}  // namespace

JobResult run_fit(const FitJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return fit(job, files); });
}

std::vector<Symptom> fitting_symptoms(Unit unit) {
  std::vector<Symptom> symptoms;
  for (int stage = 0; stage <= kOneSideStage; ++stage) {
    for (const FittingRow& row : fitting_catalogue()) {
      if (row.stage != stage) continue;
      Symptom symptom{row.number(), stage_name(stage),     row.seen,
                      row.cause,    usual_text(row, unit), {}};
      std::ranges::copy_if(correction_words(), std::back_inserter(symptom.answers),
                           [&](const CorrectionWords& words) { return words.row == row.row; });
      symptoms.push_back(symptom);
    }
  }
  return symptoms;
}

Unit unit_of_client(const std::string& path, FileStore& files) {
  ClientJob job;
  job.client = path;
  return client_in(files.read(path), job).unit;
}

}  // namespace blockwright
