#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/report/comparison.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "option_words.hpp"
#include "run_report.hpp"
#include "wishes.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

/// Which versions: a client, a session, a toile.
struct Asked {
  Client client;
  std::string file;
  Session session;
  int toile = 0;
};

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

std::vector<Asked> versions_of(const CompareJob& job, FileStore& files) {
  std::vector<Asked> versions;
  for (std::size_t i = 0; i < 2; ++i) {
    const std::string& file = i == 1 && !job.other.empty() ? job.other : job.client;
    const Client client = client_in(files.read(file), file, job);
    const Session session = session_of(client, session_date(job, client, i), file);
    versions.push_back({client, file, session, i < job.toiles.size() ? job.toiles[i] : 0});
  }
  const bool same = versions[0].file == versions[1].file &&
                    versions[0].toile == versions[1].toile &&
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

std::vector<LandmarkMove> moved_points(const Pattern& before, const Pattern& after,
                                       Alignment alignment) {
  std::vector<LandmarkMove> moves;
  for (const Piece& piece : after.pieces) {
    for (const Piece& old : before.pieces) {
      if (old.name != piece.name) continue;
      const auto here = alignment_level(piece, alignment);
      const auto there = alignment_level(old, alignment);
      const Vec shift{0.0, here && there ? *here - *there : 0.0};
      for (const Landmark& landmark : piece.landmarks) {
        for (const Landmark& was : old.landmarks) {
          if (was.name != landmark.name) continue;
          const Vec by = landmark.at - (was.at + shift);
          moves.push_back({piece.name + "." + landmark.name, Length::mm(by.x), Length::mm(by.y)});
        }
      }
    }
  }
  return moves;
}

JobResult compared(const CompareJob& job, FileStore& files) {
  judge(job);
  const PrintOptions print = print_of(job);
  const std::vector<Asked> versions = versions_of(job, files);
  const Unit unit = job.unit.value_or(versions[0].client.unit);
  std::vector<BlockRun> runs;
  runs.reserve(versions.size());
  for (const Asked& v : versions) {
    runs.push_back(fitted_block(v.client, v.file, v.session, unit, v.toile));
  }
  JobResult result;
  for (const BlockRun& run : runs) {
    for (const Problem& problem : run.problems) {
      if (problem.severity == Severity::Error) result.problems.push_back(problem);
    }
  }
  result.problems = worded(result.problems, unit);
  Comparison comparison{version_of(runs[0]),
                        version_of(runs[1]),
                        moved_points(runs[0].fitted.pattern, runs[1].fitted.pattern, job.align),
                        unit,
                        {}};
  if (!result.problems.empty()) {
    result.exit_code = 1;
  } else {
    std::vector<OutputFile> outputs;
    SheetNotes notes = notes_of(report_of(runs[1], print.cut));
    notes.versions = {"grey and dotted: " + comparison.before.name,
                      "black: " + comparison.after.name};
    const PreviousVersion previous{true_darts(runs[0].fitted.pattern).pattern, job.align, true};
    const Pattern trued = true_darts(runs[1].fitted.pattern).pattern;
    TextFonts fonts;
    add_outputs(stem_of(job), OutputOf::Sheet, job,
                {title_of(comparison), lay_out(trued, print, notes, &previous), trued, fonts},
                outputs);
    comparison.files = write_outputs(std::move(outputs), files);
  }
  result.files = comparison.files;
  result.output =
      job.report == ReportKind::Json ? comparison_json(comparison) : comparison_text(comparison);
  return result;
}

}  // namespace

JobResult run_compare(const CompareJob& job, FileStore& files) {
  return guarded(job.client, job.report, [&] { return compared(job, files); });
}

}  // namespace blockwright
