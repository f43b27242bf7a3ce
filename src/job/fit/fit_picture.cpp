#include "fit_picture.hpp"

#include "blockwright/base/version.hpp"
#include "blockwright/figure/seen_figure.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/layout/change_page.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/style/bust_dart.hpp"
#include "blockwright/text/units.hpp"
#include "drawings.hpp"
#include "shown_amounts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace blockwright {
namespace {

/// Of the figures, to the body.
constexpr double kSeenScale = 0.09;

/// A correction that a run added, withdrew or applied again; or one of those that are active.
struct ToldCorrection {
  NumberedCorrection numbered;
  bool withdrawn = false;
};

std::vector<OutputKind> wanted_kinds(const FitJob& job) {
  if (!job.write.empty() || job.add.empty()) return job.write;
  return {OutputKind::Svg};
}

/// What could not be drawn before this run, such as a correction that it withdraws, is left out.
BlockRun run_before(const FitJob& job, const std::string& text) {
  const BlockSource source = block_source(text, job, job.session);
  try {
    return fitted_block(source);
  } catch (const InputError&) {
    return drafted_block(source);
  }
}

std::vector<ToldCorrection> told_of_change(const FitJob& job, const ClientTexts& texts) {
  const auto before = numbered_corrections(client_in(texts.before, job));
  const auto now = numbered_corrections(client_in(texts.after, job));
  std::vector<ToldCorrection> told;
  for (std::size_t i = 0; i < now.size(); ++i) {
    const bool withdrawn = now[i].correction.withdrawn;
    const bool was_there = i < before.size();
    if (was_there && before[i].correction.withdrawn == withdrawn) continue;
    if (was_there || !withdrawn) told.push_back({now[i], withdrawn});
  }
  return told;
}

std::vector<ToldCorrection> told_of_all(const BlockRun& run) {
  std::vector<ToldCorrection> told;
  for (const NumberedCorrection& numbered : run.corrections) told.push_back({numbered});
  return told;
}

void add_words(const std::vector<ToldCorrection>& told, Unit unit, ChangePage& page) {
  for (const ToldCorrection& one : told) {
    page.words.push_back(
        {(one.withdrawn ? "withdrawn: " : "") + numbered_text(one.numbered, unit)});
    const std::string& seen = one.numbered.correction.seen;  // the figure has the catalogue's words
    if (!seen.empty()) page.words.push_back({"seen: " + seen});
  }
  if (told.empty()) page.words.push_back({"No correction is applied."});
}

/// The figure of a fault, and those of the corrections that mend it.
struct MendedFault {
  SeenRow seen;
  std::string words;  ///< of the corrections, with the side
  std::vector<std::string> numbers, cures;
};

/// Each fault once.
std::vector<MendedFault> mended_faults(const std::vector<ToldCorrection>& told, Unit unit) {
  std::vector<MendedFault> faults;
  for (const ToldCorrection& one : told) {
    const Correction& correction = one.numbered.correction;
    const RowAmount row = row_of(correction);
    const std::string words =
        correction.action + " " + correction.place + std::string(side_word(correction.side));
    auto fault = std::ranges::find(faults, words, &MendedFault::words);
    if (fault == faults.end()) {
      faults.push_back({{row.row, row.sign, correction.place, correction.side}, words, {}, {}});
      fault = faults.end() - 1;
    }
    const std::string number = std::to_string(one.numbered.number);
    fault->numbers.push_back(number);
    fault->cures.push_back((one.withdrawn ? "withdrawn: " : "") + number + ". " +
                           correction_text(correction, unit));
  }
  return faults;
}

void add_seen(const std::vector<ToldCorrection>& told, Unit unit, ChangePage& page) {
  for (const MendedFault& fault : mended_faults(told, unit)) {
    const std::string numbers = fmt::format("{}", fmt::join(fault.numbers, " and "));
    page.seen.push_back({seen_figure(fault.seen, kSeenScale), "seen: " + seen_words(fault.seen),
                         told.size() > 1 ? numbers : "",
                         fmt::format("{}", fmt::join(fault.cures, "; "))});
  }
}

/// What goes first on the page: what she cannot wear, then what is much; what is to be judged again
/// goes last.
int gravity(const Problem& problem) {
  if (problem.code == "fit.below_body") return 0;
  if (problem.code == "fit.limit") return 1;
  return problem.code == "fit.void" ? 3 : 2;
}

/// What the run warns of in the corrections, as on the screen.
void add_warnings(const BlockRun& run, ChangePage& page) {
  Problems told;
  for (const Problem& problem : worded(run.problems, run.unit)) {
    const bool is_of_fit = problem.code.starts_with("fit.");
    if (problem.severity == Severity::Warning && is_of_fit) told.push_back(problem);
  }
  std::ranges::stable_sort(told, {}, gravity);
  for (const Problem& problem : told) page.words.push_back({problem_text(problem)});
}

/// The pieces with their bust dart divided; nothing where the side has no room.
std::optional<Pattern> with_divided_dart(const Pattern& pattern, const Style& division,
                                         const BlockRun& run) {
  try {
    const SidePlaces sides = side_places({run.block.pattern, pattern});
    return apply_style(pattern, division, cup_of(run.body), sides).pattern;
  } catch (const InputError&) {
    return std::nullopt;
  }
}

/// Where the side has no room the dart stays one.
Style division_of(const BlockRun& run) {
  try {
    return bust_dart_division({run.block.pattern, run.fitted.pattern});
  } catch (const InputError&) {
    return {};
  }
}

/// Both versions have the bust dart as it is printed now. What became a right and a left piece
/// cannot be laid on pieces that are so divided, and is drawn with one dart.
void divide_bust_dart(const BlockRun& run, ChangePage& page) {
  const Style division = division_of(run);
  if (division.steps.empty()) return;
  const auto after = with_divided_dart(page.after, division, run);
  if (!after) return;
  if (const auto before = with_divided_dart(page.before, division, run)) {
    page.before = *before;
    page.after = *after;
    return;
  }
  page.words.push_back(
      {"The bust dart is drawn here as one; the printed pieces divide it between shoulder and "
       "side."});
}

/// A bust that gets fuller or smaller lengthens or shortens a front that hangs from the neck.
Alignment laid_for(const std::vector<ToldCorrection>& told) {
  const auto of_bust = [](const ToldCorrection& one) {
    const CorrectionRow row = row_of(one.numbered.correction).row;
    return row == CorrectionRow::FullerBust || row == CorrectionRow::SmallerBust;
  };
  const bool all = !told.empty() && std::ranges::all_of(told, of_bust);
  return all ? Alignment::Neck : Alignment::Still;
}

std::vector<NumberedCorrection> numbered_of(const std::vector<ToldCorrection>& told) {
  std::vector<NumberedCorrection> corrections;
  corrections.reserve(told.size());
  for (const ToldCorrection& one : told) corrections.push_back(one.numbered);
  return corrections;
}

ChangePage page_of_change(const FitJob& job, const ClientTexts& texts, const BlockRun& run) {
  ChangePage page;
  const bool changed = texts.before != texts.after;
  page.before = changed ? run_before(job, texts.before).fitted.pattern : run.block.pattern;
  page.after = run.fitted.pattern;
  page.before_is = changed ? "as it was" : "as drafted";
  page.now_is = changed ? "as it is now" : "corrected";
  const auto told = changed ? told_of_change(job, texts) : told_of_all(run);
  page.words = {{changed ? "What this changed" : "All corrections", true}};
  add_words(told, run.unit, page);
  add_warnings(run, page);
  divide_bust_dart(run, page);
  add_seen(told, run.unit, page);
  page.alignment = laid_for(told);
  page.amounts = shown_amounts(numbered_of(told), run);
  return page;
}

std::string picture_stem(const FitJob& job) {
  const std::string folder = job.out.empty() ? folder_of(job.client) : job.out;
  return joined_path(folder, safe_stem(job.client) + "-fit");
}

}  // namespace

std::vector<NewFile> fit_pictures(const FitJob& job, const ClientTexts& texts,
                                  const BlockRun& run) {
  DrawingJob drawing = job;
  drawing.write = wanted_kinds(job);
  if (drawing.write.empty() || has_errors(run.problems)) return {};
  const PrintOptions print = print_of(drawing);
  ChangePage page = page_of_change(job, texts, run);
  page.title = run.client.name;
  page.subtitle =
      "Fitting, session " + run.session.date + ", blockwright " + std::string(version());
  page.unit = run.unit;
  TextFonts fonts;
  const PrintPlan plan = change_page(page, print, fonts).plan;
  std::vector<NewFile> pictures;
  add_page(picture_stem(job), drawing, plan, fonts, pictures);
  return pictures;
}

std::vector<std::string> write_fitting(const FitJob& job, const ClientTexts& texts,
                                       const std::vector<NewFile>& pictures, FileStore& files) {
  std::vector<NewFile> client;
  if (texts.before != texts.after) {
    client = {{job.client, texts.after}, {job.client + ".bak", texts.before}};
  }
  const bool together =
      !pictures.empty() && folder_of(pictures.front().path) == folder_of(job.client);
  std::vector<std::string> paths;
  paths.reserve(client.size() + pictures.size());
  for (const NewFile& file : client) paths.push_back(file.path);
  for (const NewFile& file : pictures) paths.push_back(file.path);
  if (together) {
    client.insert(client.end(), pictures.begin(), pictures.end());
  } else if (!pictures.empty()) {
    files.write_all(pictures);
  }
  if (!client.empty()) in_its_place([&] { files.write_all(client); });
  return paths;
}

}  // namespace blockwright
