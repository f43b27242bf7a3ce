#include "block_pass.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/report/comparison.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "option_words.hpp"

#include <algorithm>
#include <span>
#include <utility>

namespace blockwright {
namespace {

/// The date at `i` of the list; of two sessions of one client the older and the newest where none
/// is named.
std::string session_date(const CompareJob& job, const Client& client, std::size_t i) {
  if (i < job.sessions.size()) return job.sessions[i];
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
    if (i < job.toiles.size()) version.before_toile = job.toiles[i];
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

/// Of the points that both blocks have, the older block first.
std::vector<LandmarkMove> moved_points(std::span<const BlockRun> runs, Alignment alignment) {
  std::vector<LandmarkMove> moves;
  const std::vector<Piece>& before = runs.front().fitted.pattern.pieces;
  for (const Piece& piece : runs.back().fitted.pattern.pieces) {
    const auto old = std::ranges::find(before, piece.name, &Piece::name);
    if (old == before.end()) continue;
    const auto here = alignment_level(piece, alignment), there = alignment_level(*old, alignment);
    const Vec shift{0.0, here && there ? *here - *there : 0.0};
    for (const Landmark& landmark : piece.landmarks) {
      const auto was = std::ranges::find(old->landmarks, landmark.name, &Landmark::name);
      if (was == old->landmarks.end()) continue;
      const Vec by = landmark.at - (was->at + shift);
      moves.push_back({piece.name + "." + landmark.name, Length::mm(by.x), Length::mm(by.y)});
    }
  }
  return moves;
}

/// The newer block over the older one.
std::vector<std::string> write_overlay(const CompareJob& job, std::span<const BlockRun> runs,
                                       const Comparison& comparison, FileStore& files) {
  const PrintOptions print = print_of(job);
  SheetNotes notes = notes_of(report_of(runs.back(), print.cut));
  notes.versions = {"grey and dotted: " + comparison.before.name,
                    "black: " + comparison.after.name};
  const PreviousVersion previous{true_darts(runs.front().fitted.pattern).pattern, job.align, true};
  const Pattern trued = true_darts(runs.back().fitted.pattern).pattern;
  TextFonts fonts;
  std::vector<NewFile> outputs;
  add_outputs(stem_of(job), OutputOf::Sheet, job,
              {title_of(comparison), lay_out(trued, print, notes, &previous), trued, fonts},
              outputs);
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
  for (const BlockRun& run : runs) add(result.problems, worded(run.problems, run.unit));
  std::erase_if(result.problems, [](const Problem& p) { return p.severity != Severity::Error; });
  Comparison comparison{version_of(runs.front()),
                        version_of(runs.back()),
                        moved_points(runs, job.align),
                        runs.back().unit,
                        {}};
  if (result.problems.empty()) {
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
