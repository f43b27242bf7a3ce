#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/report/comparison.hpp"
#include "drawings.hpp"
#include "guarded.hpp"
#include "run_report.hpp"
#include "wishes.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

Alignment alignment_named(const std::string& name) {
  if (name == "waist") return Alignment::Waist;
  if (name == "bust") return Alignment::Bust;
  if (name == "neck") return Alignment::Neck;
  refuse_option("align", "'" + name + "' is not known", "use waist, bust or neck");
}

/// The options that a comparison shares with a draft are judged by the same rules.
Wishes wishes_of(const CompareJob& job) {
  Job common;
  common.cut = "net";
  common.write = job.write;
  common.paper = job.paper;
  common.unit = job.unit;
  common.report = job.report;
  common.margin = job.margin;
  common.overlap = job.overlap;
  return wishes_of(common);
}

/// Which versions: a client, a session, a toile.
struct Asked {
  Client client;
  std::string file;
  Session session;
  int toile = 0;
};

void require_at_most_two(const CompareJob& job) {
  if (job.sessions.size() > 2)
    refuse_option("session", "more than two sessions were named", "name two");
  if (job.toiles.size() > 2) refuse_option("toile", "more than two toiles were named", "name two");
  for (const int toile : job.toiles) {
    if (toile < 0) refuse_option("toile", std::to_string(toile) + " is no toile", "use 1, 2 ...");
  }
}

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
  require_at_most_two(job);
  std::vector<Asked> versions;
  for (std::size_t i = 0; i < 2; ++i) {
    const std::string& file = i == 1 && !job.other.empty() ? job.other : job.client;
    const Client client = client_in(file, files);
    const Session session = session_of(client, session_date(job, client, i), file);
    versions.push_back({client, file, session, i < job.toiles.size() ? job.toiles[i] : 0});
  }
  const bool same = versions[0].file == versions[1].file &&
                    versions[0].toile == versions[1].toile &&
                    versions[0].session.date == versions[1].session.date;
  if (same) {
    refuse_option(
        "session", "there is only one version to look at",
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
  const Wishes wishes = wishes_of(job);
  const Alignment alignment = alignment_named(job.align);
  const std::vector<Asked> versions = versions_of(job, files);
  const Unit unit = wishes.unit.value_or(versions[0].client.unit);
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
                        moved_points(runs[0].fitted.pattern, runs[1].fitted.pattern, alignment),
                        unit,
                        {}};
  if (!result.problems.empty()) {
    result.exit_code = 1;
  } else {
    std::vector<OutputFile> outputs;
    SheetNotes notes = notes_of(report_of(runs[1], wishes.print.cut));
    notes.versions = {"grey and dotted: " + comparison.before.name,
                      "black: " + comparison.after.name};
    const PreviousVersion previous{true_darts(runs[0].fitted.pattern).pattern, alignment, true};
    const Pattern trued = true_darts(runs[1].fitted.pattern).pattern;
    add_drawings(stem_of(job), wishes, title_of(comparison),
                 lay_out(trued, wishes.print, notes, &previous), outputs);
    comparison.files = write_outputs(std::move(outputs), files);
  }
  result.files = comparison.files;
  result.output = wishes.report_json ? comparison_json(comparison) : comparison_text(comparison);
  return result;
}

}  // namespace

JobResult run_compare(const CompareJob& job, FileStore& files) {
  return guarded(job.client, job.report == "json", [&] { return compared(job, files); });
}

}  // namespace blockwright
