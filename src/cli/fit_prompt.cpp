#include "fit_prompt.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/job/fit_words.hpp"
#include "fit_choice.hpp"
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
  FitSession(const FitJob& job, const AskedOn& on)
      : job_(job),
        files_(on.files),
        today_(on.today),
        ask_(with_preview(on)),
        fitting_(meant_fitting(job.client, {job.date, job.toile}, on.files)),
        lacking_(places_lacking(job, on.files)) {}

  void run(const std::string& seen) {
    if (seen.empty()) ask_.introduce();
    if (!fitting_.date.empty() && fitting_.toile) {
      ask_.say("These go to toile " + std::to_string(*fitting_.toile) + " of " + fitting_.date +
               "; --date and --toile name another.");
    }
    FitChoice choice(ask_.unit(), lacking_);
    std::optional<WantedCorrection> wanted;
    if (!seen.empty()) wanted = choice.hear(seen);
    while (wanted || (wanted = ask_.correction(choice))) {
      if (add(*wanted) != GoesOn::Back) choice = FitChoice(ask_.unit(), lacking_);
      wanted.reset();
    }
  }

  /// The fitting whose note no correction brought into the file; empty where there is nothing to
  /// note.
  [[nodiscard]] FittingName fitting_to_note() const {
    if (has_written_ || job_.note.empty()) return {};
    if (!fitting_.date.empty() && fitting_.toile) return fitting_;
    ask_.say("The note is not kept: it needs --date and --toile, or a correction.");
    return {};
  }

 private:
  [[nodiscard]] AskedOn with_preview(AskedOn on) {
    on.preview = [this](const WantedCorrection& wanted) {
      return preview_fit(any_day(wanted), files_);
    };
    return on;
  }

  /// Of a fitting that is not known yet today and the next toile will do.
  [[nodiscard]] FitJob any_day(const WantedCorrection& wanted) const {
    FitJob one = job_with(wanted);
    if (one.date.empty()) one.date = today_;
    if (!one.toile) one.toile = next_toile_number(job_.client, files_);
    return one;
  }

  /// Asks for what is missing, shows what it does, writes it if she says yes. What is refused is
  /// asked for again, and nothing else. Back: to the corrections.
  GoesOn add(WantedCorrection& wanted) {
    wanted.fitting = fitting_;
    GoesOn goes_on = ask_.complete(wanted);
    while (goes_on == GoesOn::Next) {
      const FitPreview preview = preview_fit(job_with(wanted), files_);
      goes_on = preview.does.empty() ? ask_.mended(wanted, preview) : agreed(wanted, preview);
    }
    return goes_on;
  }

  GoesOn agreed(WantedCorrection& wanted, const FitPreview& preview) {
    const Agreed agreed = ask_.agreed(wanted, preview);
    if (agreed == Agreed::Back) return ask_.asked_again(wanted);
    if (agreed == Agreed::OtherAmount) return GoesOn::Next;
    fitting_ = wanted.fitting;
    if (agreed == Agreed::Yes) write(wanted);
    return GoesOn::Leave;
  }

  [[nodiscard]] FitJob job_with(const WantedCorrection& wanted) const {
    FitJob one = job_;
    one.add = {wanted.words + " " + ask_.amount_to_add(wanted)};
    one.as = {wanted.as};
    one.side = {wanted.side};
    one.seen = {wanted.seen};
    one.date = wanted.fitting.date;
    one.toile = wanted.fitting.toile;
    one.undo = one.redo = {};
    one.typed = {};
    one.ask = std::nullopt;
    one.list = false;
    one.report = ReportKind::Text;
    return one;
  }

  void write(const WantedCorrection& wanted) {
    const FitJob one = job_with(wanted);
    const JobResult result = run_fit(one, files_);
    if (result.exit_code != 0) {
      for (const Problem& problem : result.problems) ask_.say(to_text(problem));
      return;
    }
    has_written_ = true;
    ask_.say("Added: " + ask_.in_words(wanted) + ".");
    for (const std::string& file : result.files) {
      const bool of_client = file == job_.client || file == job_.client + ".bak";
      if (!of_client) ask_.say("The page of it: " + shown_place(file));
    }
  }

  const FitJob& job_;
  FileStore& files_;
  std::string today_;
  FitQuestions ask_;
  FittingName fitting_;  ///< that the next correction goes to, as far as it is known
  std::vector<std::string_view> lacking_;  ///< places of darts that her block has not got
  bool has_written_ = false;
};

}  // namespace

void ask_for_corrections(FitJob& job, const std::string& today, FileStore& files,
                         const Terminal& at) {
  judge_before_asking(job, files);
  Job drafted;
  drafted.client = job.client;
  drafted.session = job.session;
  drafted.unit = job.unit;
  const bool goes_on = ask_of_explained(drafted, files, at.in, at.out);
  const std::string seen = job.ask.value_or("");
  job.ask = std::nullopt;
  FitSession session(job, {Prompt(at.in, at.out), today, job.client, files, job.unit});
  if (goes_on) session.run(seen);
  const FittingName noted = session.fitting_to_note();
  if (job.add.empty()) {
    job.date = noted.date;
    job.toile = noted.toile;
    if (noted.date.empty()) job.by = job.note = "";
  }
  at.out << "\n";
}

}  // namespace blockwright
