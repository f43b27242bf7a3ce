#include "tape_prompt.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/job/tape_form.hpp"
#include "prompt.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <vector>

namespace blockwright {
namespace {

/// Nothing more is asked once the input has ended.
struct InputEnded {};

std::string without_spaces_round(const std::string& line) {
  const std::size_t begin = line.find_first_not_of(" \t\r");
  if (begin == std::string::npos) return "";
  return line.substr(begin, line.find_last_not_of(" \t\r") - begin + 1);
}

void say(const Prompt& prompt, std::string_view sentence) {
  prompt.out() << "  " << printable(sentence) << "\n";
}

void say(const Prompt& prompt, const Problem& problem) {
  const std::string hint = problem.hint.plain();
  say(prompt, problem.message.plain() + (hint.empty() ? "" : ": " + hint));
}

/// What is entered is not lost to a line that is too long.
std::string asked(const Prompt& prompt, const std::string& question) {
  for (;;) {
    try {
      const auto line = prompt.answer(question);
      if (!line) throw InputEnded();
      return without_spaces_round(*line);
    } catch (const UsageError& error) {
      say(prompt, error.problem());
    }
  }
}

/// Asks until `take` refuses nothing.
void ask_until(const Prompt& prompt, const std::string& question,
               const std::function<void(const std::string&)>& take) {
  for (;;) {
    try {
      take(asked(prompt, question));
      return;
    } catch (const InputError& error) {
      say(prompt, error.problem());
    }
  }
}

Unit asked_unit(const Prompt& prompt) {
  for (;;) {
    if (const auto unit = unit_typed(asked(prompt, "Unit of the tape: cm or in"))) return *unit;
    say(prompt, "cm or in");
  }
}

void ask_who(const TapeJob& job, const Prompt& prompt, TapeForm& form) {
  if (!form.is_new_client()) {
    prompt.out() << printable(form.name) << ", in " << unit_word(form.unit) << "\n";
    return;
  }
  prompt.out() << shown_place(form.path) << " is not there yet: a new person.\n";
  ask_until(prompt, "Name", [&](const std::string& name) { name_client(form, name); });
  if (!job.unit) form.unit = asked_unit(prompt);
}

void ask_when(const TapeJob& job, const std::string& today, const Prompt& prompt, TapeForm& form) {
  if (!job.date.empty()) {
    date_session(form, job.date);
  } else {
    const std::string usual = form.begun.empty() ? today : form.begun;
    ask_until(prompt, "Date of this session (Enter: " + usual + ")",
              [&](const std::string& date) { date_session(form, date.empty() ? usual : date); });
  }
  if (form.continued) return;
  if (!job.by.empty()) {
    name_taker(form, job.by);
  } else {
    ask_until(prompt, "Who holds the tape? (Enter: leave it out)",
              [&](const std::string& by) { name_taker(form, by); });
  }
}

/// What the person does at a measurement.
enum class GoesOn { Next, Back, Save };

/// One measurement, asked for until there is an answer. An unlikely one is asked for once more, and
/// kept if it is typed again or with Enter; the words of the prompt hold there, too.
class AskedMeasurement {
 public:
  AskedMeasurement(const Prompt& prompt, TapeForm& form, MeasurementName name)
      : prompt_(prompt), form_(form), name_(name) {}

  GoesOn ask() {
    introduce();
    for (;;) {
      const TapeQuestion question = question_of(form_, name_);
      const std::string words = doubted_ ? "  Type it again, or Enter to keep " + question.value
                                         : question.name + ", " + question.unit;
      if (const auto way = after(asked(prompt_, words))) return *way;
    }
  }

 private:
  void introduce() {
    const TapeQuestion question = question_of(form_, name_);
    prompt_.out() << "\n"
                  << question.number << " of " << kMeasurementCount << "  " << question.name
                  << "\n";
    say(prompt_, question.how);
    if (!question.known.empty()) say(prompt_, question.known);
    if (question.value.empty()) return;
    const char* const has = question.entered ? "You entered " : "The file has ";
    const bool may_go = question.entered && !question.needed;
    say(prompt_,
        has + question.value + "; Enter keeps it" + (may_go ? ", \"skip\" takes it out." : "."));
  }

  /// What follows from an answer; nothing: it is asked once more.
  std::optional<GoesOn> after(const std::string& answer) {
    const std::string word = in_small_letters(answer);
    if (word == "back") return kept(GoesOn::Back);
    if (ends_questions(word)) return kept(GoesOn::Save);
    if (word == "?") return explained();
    if (word == "skip") return skipped();
    if (!word.empty()) return entered(answer);
    const TapeQuestion question = question_of(form_, name_);
    return question.needed && question.value.empty() ? refused() : kept(GoesOn::Next);
  }

  GoesOn kept(GoesOn way) const {
    if (doubted_) say(prompt_, question_of(form_, name_).value + " is kept.");
    return way;
  }

  std::optional<GoesOn> explained() const {
    const TapeQuestion question = question_of(form_, name_);
    say(prompt_, "It closes " + question.closes + ".");
    say(prompt_, "Where the tape runs: docs/tape.md, " + question.figure + ".");
    say(prompt_,
        "Type a value once more to correct it; \"skip\" takes out what you entered. \"back\" "
        "leads to the one before.");
    return std::nullopt;
  }

  std::optional<GoesOn> refused() const {
    say(prompt_, "The bust girth is the one measurement that is needed.");
    return std::nullopt;
  }

  std::optional<GoesOn> skipped() {
    const TapeQuestion question = question_of(form_, name_);
    if (question.needed) return refused();
    if (!question.entered) return GoesOn::Next;
    take_out(form_, name_);
    const std::string left = question_of(form_, name_).value;
    say(prompt_, question.value + " is taken out" +
                     (left.empty() ? "." : "; what the file has stays: " + left + "."));
    return GoesOn::Next;
  }

  std::optional<GoesOn> entered(const std::string& answer) {
    const auto before = form_.taken.tape[name_];
    try {
      const Remarks remarks = enter(form_, name_, answer);
      if (doubted_ && form_.taken.tape[name_] == before) return kept(GoesOn::Next);
      for (const std::string& sentence : remarks.sentences) say(prompt_, sentence);
      doubted_ = remarks.ask_again;
      if (!doubted_) return GoesOn::Next;
    } catch (const InputError& error) {
      say(prompt_, error.problem());
    }
    return std::nullopt;
  }

  const Prompt& prompt_;
  TapeForm& form_;
  MeasurementName name_;
  bool doubted_ = false;  // whether what is entered is asked for once more
};

void say_begin(const Prompt& prompt, const TapeForm& form, const TapeRound& round) {
  if (form.continued) {
    prompt.out() << "The file has a session of that date";
    if (round.in_file == kMeasurementCount) {
      prompt.out() << ", and all " << kMeasurementCount << " are taken.\n";
    } else {
      prompt.out() << ": what it has not got yet is asked. \"back\" leads to what it has.\n";
    }
  }
  prompt.out()
      << "\nType one reading, or several with spaces between; the middle one is used.\n"
      << "Enter leaves a measurement out, or keeps what is there. \"back\" goes to the one\n"
      << "before, to correct it or, with \"skip\", to take it out; \"?\" tells what it is for;\n"
      << "\"save\" ends. Whatever you entered is kept.\n";
}

void ask_measurements(const Prompt& prompt, TapeForm& form) {
  const TapeRound round = round_of(form);
  say_begin(prompt, form, round);
  const std::size_t begin = round.in_file == kMeasurementCount ? 0 : round.in_file;
  for (std::size_t i = begin; i < round.names.size();) {
    if (i == kFirstMeasurements && round.in_file == 0) {
      prompt.out()
          << "\nThat is enough for a good first block. The others make it better; what is\n"
          << "left out is estimated.\n";
    }
    const GoesOn way = AskedMeasurement(prompt, form, round.names[i]).ask();
    if (way == GoesOn::Save) return;
    if (way == GoesOn::Next) {
      ++i;
    } else if (i > 0) {
      --i;
    } else {
      say(prompt, "This is the first one.");
    }
  }
}

/// What cannot be written is shown, so that nobody takes it twice.
void show_entered(const Prompt& prompt, const TapeForm& form) {
  prompt.out() << "\nIt could not be written. What you entered, of " << form.date << ":\n";
  for (const NewReadings& taken : form.entered) {
    std::string line = question_of(form, taken.name).name + ":";
    for (const std::string& value : taken.values) line += " " + value;
    say(prompt, line);
  }
}

void save_or_show(const TapeForm& form, FileStore& files, const Prompt& prompt) {
  try {
    save_tape(form, files);
  } catch (const Error&) {
    show_entered(prompt, form);
    throw;
  }
}

bool save(const TapeForm& form, FileStore& files, const Prompt& prompt) {
  if (form.entered.empty() && round_of(form).in_file == kMeasurementCount) {
    prompt.out() << "\nNothing is changed: all " << kMeasurementCount << " are taken.\n";
    return true;
  }
  const std::string missing = missing_from(form);
  if (!missing.empty()) {
    prompt.out() << "\nNothing is written: " << missing << ".\n";
    return false;
  }
  save_or_show(form, files, prompt);
  const std::string path = shown_place(form.path);
  const std::size_t count = form.entered.size();
  prompt.out() << "\nWritten into " << path << ": " << count
               << (count == 1 ? " measurement" : " measurements") << " of " << form.date << ".\n";
  if (!form.is_new_client()) prompt.out() << "The text before it is " << path << ".bak\n";
  prompt.out() << "Next: blockwright draft " << as_argument(form.path) << "\n";
  return true;
}

}  // namespace

bool ask_for_tape(const TapeJob& job, const std::string& today, FileStore& files, std::istream& in,
                  std::ostream& out) {
  const Prompt prompt(in, out);
  TapeForm form = open_tape(job, files);
  try {
    ask_who(job, prompt, form);
    ask_when(job, today, prompt, form);
    ask_measurements(prompt, form);
  } catch (const InputEnded&) {
    out << "\n";
  }
  return save(form, files, prompt);
}

}  // namespace blockwright
