#include "block_pass.hpp"
#include "blockwright/base/version.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/layout/change_page.hpp"
#include "blockwright/report/comparison.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "new_tape_sums.hpp"
#include "option_words.hpp"
#include "toile_number.hpp"

#include <algorithm>
#include <iterator>
#include <span>
#include <utility>

namespace blockwright {
namespace {

/// The session that a toile was cut from, by its fitting; that of one not fitted yet is the newest.
std::string date_of_toile(const Client& client, int toile) {
  const auto fitted = std::ranges::find_if(
      client.fittings, [&](const Fitting& fitting) { return toile > 0 && fitting.toile >= toile; });
  const Session* cut_from =
      fitted == client.fittings.end() ? nullptr : session_of_fitting(client, fitted->date);
  return cut_from == nullptr ? client.sessions.back().date : cut_from->date;
}

/// The date at `i` of the list; where none is named, of two toiles what each was cut from, and of
/// two sessions of one client the older and the newest.
std::string session_date(const CompareJob& job, const Client& client, std::size_t i) {
  if (i < job.sessions.size()) return job.sessions[i];
  if (i < job.toiles.size()) return date_of_toile(client, job.toiles[i]);
  const std::size_t count = client.sessions.size();
  const bool by_session = job.other.empty() && job.toiles.empty();
  if (by_session && i == 0 && job.sessions.empty() && count >= 2) {
    return client.sessions[count - 2].date;
  }
  return client.sessions.back().date;
}

std::vector<BlockSource> versions_of(const CompareJob& job, FileStore& files) {
  std::vector<BlockSource> versions;
  for (std::size_t i = 0; i < 2; ++i) {
    ClientJob one = job;
    if (i == 1 && !job.other.empty()) one.client = job.other;
    BlockSource& version = versions.emplace_back(block_source(files.read(one.client), one, ""));
    version.session = session_in(version.client, one, {session_date(job, version.client, i), i});
    version.unit = job.unit.value_or(versions[0].client.unit);
    if (i < job.toiles.size()) {
      judge_toile(job.toiles[i], version.client, place_of("--toile", job.places, i));
      version.before_toile = job.toiles[i];
    }
  }
  const bool same = versions[0].file == versions[1].file &&
                    versions[0].before_toile == versions[1].before_toile &&
                    versions[0].session.date == versions[1].session.date;
  if (same) {
    refuse_option(
        "--session", "there is only one version to look at",
        "name two sessions (--session A --session B), two toiles (--toile 1 --toile 2) or two "
        "client files");
  }
  return versions;
}

std::string stem_of(const CompareJob& job) {
  std::string stem = safe_stem(job.client);
  if (!job.other.empty()) stem += "-and-" + safe_stem(job.other);
  return joined_path(job.out, stem + "-compare");
}

std::string version_name(const BlockRun& run) {
  const std::size_t count = run.corrections.size();
  return run.client.name + ", session " + run.session.date + ", " +
         (count == 0 ? "no" : std::to_string(count)) +
         (count == 1 ? " correction" : " corrections");
}

Version version_of(const BlockRun& run) {
  return {run.client.name, version_name(run), run.session, stage_of("", run.fitted.pattern)};
}

/// What is said of two versions: errors, and a sum of a newer tape that nobody has decided on.
Problems told_of(const std::vector<BlockRun>& runs) {
  Problems told;
  for (const BlockRun& run : runs) {
    for (const Problem& problem : worded(run.problems, run.unit)) {
      const bool counts = problem.severity == Severity::Error || problem.code == "fit.explained";
      const auto is_same = [&](const Problem& other) {
        return other.message == problem.message && other.where == problem.where;
      };
      if (counts && std::ranges::none_of(told, is_same)) told.push_back(problem);
    }
  }
  return told;
}

/// How far the points that both blocks have moved, as both are laid together.
std::vector<LandmarkMove> moved_points(std::span<const BlockRun> runs, Alignment alignment) {
  std::vector<LandmarkMove> moves;
  for (const Piece& piece : runs.back().fitted.pattern.pieces) {
    const Piece* old = earlier_version(piece, runs.front().fitted.pattern);
    if (old == nullptr) continue;
    const Placement lies = laid_under(piece, *old, alignment);
    const double out = is_mirrored(piece) ? -1.0 : 1.0;
    for (const Landmark& landmark : piece.landmarks) {
      const Landmark* was = find_named(old->landmarks, landmark.name);
      if (was == nullptr) continue;
      const Vec by = landmark.at - lies(was->at);
      moves.push_back({piece.name + "." + landmark.name, Length::mm(out * by.x), Length::mm(by.y)});
    }
  }
  return moves;
}

/// Both on one page, as large as it takes them.
DrawnChange small_picture(const CompareJob& job, std::span<const BlockRun> runs,
                          const Comparison& comparison, TextFonts& fonts) {
  ChangePage page;
  page.before = runs.front().fitted.pattern;
  page.after = runs.back().fitted.pattern;
  page.alignment = job.align;
  page.title = title_of(comparison);
  page.subtitle = "blockwright " + std::string(version());
  page.words = {{"The lines", true},
                {"grey: " + comparison.before.name},
                {"black: " + comparison.after.name}};
  page.before_is = "before";
  page.now_is = "after";
  page.every_point = true;
  page.unit = comparison.unit;
  return change_page(page, print_of(job), fonts);
}

/// The newer block over the older one in true size, where nothing is cut.
Layout overlay_of(const CompareJob& job, std::span<const BlockRun> runs,
                  const Comparison& comparison) {
  const PrintOptions print = print_of(job);
  SheetNotes notes = notes_of(report_of(runs.back(), print.cut));
  notes.versions = {"grey and dotted: " + comparison.before.name,
                    "black, heavy where it moved: " + comparison.after.name};
  std::ranges::move(
      laid_together_words(runs.back().fitted.pattern, job.align, runs.front().fitted.pattern),
      std::back_inserter(notes.versions));
  notes.to_look_at = "two versions over each other, not for cutting";
  const PreviousVersion previous{true_darts(runs.front().fitted.pattern).pattern, job.align, true};
  return lay_out(true_darts(runs.back().fitted.pattern).pattern, print, notes, &previous);
}

/// As SVG the sheet in true size; as PDF one page, and where that is smaller than life the sheet on
/// the pages behind it.
std::vector<std::string> write_overlay(const CompareJob& job, std::span<const BlockRun> runs,
                                       const Comparison& comparison, FileStore& files) {
  TextFonts fonts;
  const Layout overlay = overlay_of(job, runs, comparison);
  DrawnChange small = small_picture(job, runs, comparison, fonts);
  if (small.reduction > 1.0) {
    PrintPlan tiles = tile(overlay, fonts);
    std::ranges::move(tiles.pages, std::back_inserter(small.plan.pages));
    small.plan.sheet = std::move(tiles.sheet);
  }
  std::vector<NewFile> outputs;
  CompareJob pages = job, sheet = job;
  std::erase(pages.write, OutputKind::Svg);
  std::erase(sheet.write, OutputKind::Pdf);
  const std::string title = title_of(comparison);
  add_outputs(stem_of(job), OutputOf::Sheet, sheet,
              {title, overlay, runs.back().fitted.pattern, fonts}, outputs);
  add_page(stem_of(job), pages, small.plan, fonts, outputs);
  return write_outputs(outputs, files);
}

JobResult compared(const CompareJob& job, FileStore& files) {
  judge(job);
  (void)print_of(job);
  const std::vector<Preparation> writers = prepare_writers(job);
  std::vector<BlockRun> runs;
  for (BlockSource& version : versions_of(job, files)) {
    runs.push_back(fitted_block(std::move(version)));
  }
  JobResult result;
  result.problems = told_of(runs);
  Comparison comparison{version_of(runs.front()),
                        version_of(runs.back()),
                        moved_points(runs, job.align),
                        runs.back().unit,
                        {},
                        result.problems};
  if (!has_errors(result.problems)) {
    comparison.files = write_overlay(job, runs, comparison, files);
  } else {
    result.exit_code = 1;
  }
  result.files = comparison.files;
  result.output =
      job.report == ReportKind::Json ? comparison_json(comparison) : comparison_text(comparison);
  return result;
}

}  // namespace

JobResult run_compare(const CompareJob& job, FileStore& files) {
  return guarded(job.client, job.report, job.places, [&] { return compared(job, files); });
}

}  // namespace blockwright
