#include "fit_prompt.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/job/fit_words.hpp"
#include "fit_questions.hpp"
#include "new_tape_prompt.hpp"
#include "prompt.hpp"

#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace blockwright {
namespace {

/// The session at the prompt: what is seen, which correction, how much; then it is written.
class FitSession {
 public:
  FitSession(FitJob& job, FileStore& files, const AskedOn& on)
      : job_(job), files_(files), ask_(on, unit_of_client(job.client, files)) {
    const NewestFitting newest = newest_fitting(job.client, files);
    if (job_.date.empty()) job_.date = newest.date;
    if (job_.toile == 0) job_.toile = newest.toile;
  }

  void run(std::string seen) {
    if (seen.empty()) ask_.introduce();
    if (job_.toile != 0) {
      ask_.say("These go to toile " + std::to_string(job_.toile) + " of " + job_.date +
               "; --date and --toile name another.");
    }
    while (const auto wanted = ask_.correction(seen)) {
      seen.clear();
      add(*wanted);
    }
  }

 private:
  /// Asks for what is missing, shows what it does, writes it if she says yes. What is refused is
  /// asked for again, and nothing else.
  void add(WantedCorrection wanted) {
    if (!ask_.complete(wanted) || !ask_.fitting(job_.date, job_.toile)) return;
    for (;;) {
      const FitJob one = job_with(wanted);
      const FitPreview preview = preview_fit(one, files_);
      if (preview.does.empty()) {
        if (!ask_.mended(wanted, preview, job_)) return;
        continue;
      }
      const Agreed agreed = ask_.agreed(wanted, preview);
      if (agreed == Agreed::Yes) write(one, wanted);
      if (agreed != Agreed::OtherAmount) return;
    }
  }

  [[nodiscard]] FitJob job_with(const WantedCorrection& wanted) const {
    FitJob one = job_;
    one.add = {wanted.words + " " + wanted.amount};
    one.as = {wanted.as};
    one.side = {wanted.side};
    one.seen = {wanted.seen};
    one.undo = one.redo = {};
    one.typed = {};
    one.ask = std::nullopt;
    one.list = false;
    one.report = ReportKind::Text;
    return one;
  }

  void write(const FitJob& one, const WantedCorrection& wanted) {
    const JobResult result = run_fit(one, files_);
    if (result.exit_code == 0) {
      ask_.say("Added: " + shown(wanted.words + " " + wanted.amount) + ", toile " +
               std::to_string(job_.toile) + " of " + job_.date + ".");
      return;
    }
    for (const Problem& problem : result.problems) ask_.say(to_text(problem));
  }

  FitJob& job_;
  FileStore& files_;
  FitQuestions ask_;
};

}  // namespace

void ask_for_corrections(FitJob& job, const std::string& today, FileStore& files,
                         const Terminal& at) {
  Job drafted;
  drafted.client = job.client;
  drafted.session = job.session;
  drafted.unit = job.unit;
  ask_of_explained(drafted, files, at.in, at.out);
  const std::string seen = job.ask.value_or("");
  job.ask = std::nullopt;
  FitSession(job, files, {Prompt(at.in, at.out), today}).run(seen);
  at.out << "\n";
}

}  // namespace blockwright
