#include "tape_prompt.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/job/tape_form.hpp"
#include "prompt.hpp"

#include <functional>
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
    const std::string answer = asked(prompt, "Unit of the tape: cm or in");
    if (answer == "cm") return Unit::Cm;
    if (answer == "in" || answer == "inches") return Unit::Inch;
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
  if (form.continued) {
    prompt.out() << "The file has a session of that date: what it has not got yet is asked.\n";
  } else if (!job.by.empty()) {
    name_taker(form, job.by);
  } else {
    ask_until(prompt, "Who holds the tape? (Enter: leave it out)",
              [&](const std::string& by) { name_taker(form, by); });
  }
}

/// What the person does at a measurement.
enum class GoesOn { Next, Back, Save };

/// Enters an answer. An unlikely one is asked for once more, and kept if it is typed again or Enter
/// is pressed.
void enter_answer(const Prompt& prompt, TapeForm& form, MeasurementName name, std::string answer) {
  const std::string again = "  Type it again, or Enter to keep it, " + question_of(form, name).unit;
  for (std::string doubted;;) {
    const Remarks remarks = enter(form, name, answer);
    if (answer == doubted) return;
    for (const std::string& sentence : remarks.sentences) say(prompt, sentence);
    if (!remarks.ask_again) return;
    doubted = answer;
    answer = asked(prompt, again);
    if (answer.empty()) return;
  }
}

GoesOn ask_measurement(const Prompt& prompt, TapeForm& form, MeasurementName name) {
  const TapeQuestion question = question_of(form, name);
  say(prompt, question.how);
  if (!question.known.empty()) say(prompt, question.known);
  if (!question.now.empty()) say(prompt, "You entered " + question.now + "; Enter keeps it.");
  for (;;) {
    const std::string answer = asked(prompt, question.name + ", " + question.unit);
    if (answer == "back") return GoesOn::Back;
    if (answer == "save") return GoesOn::Save;
    const bool left_out = answer.empty() || answer == "skip";
    const bool needed = name == MeasurementName::BustGirth && !form.taken.tape[name];
    if (left_out && !needed) return GoesOn::Next;
    try {
      if (left_out) {
        say(prompt, "The bust girth is the one measurement that is needed.");
      } else if (answer == "?") {
        say(prompt, "It closes " + question.closes + ".");
        say(prompt, "Where the tape runs: docs/tape.md, " + question.figure + ".");
      } else {
        enter_answer(prompt, form, name, answer);
        return GoesOn::Next;
      }
    } catch (const InputError& error) {
      say(prompt, error.problem());
    }
  }
}

void ask_measurements(const Prompt& prompt, TapeForm& form) {
  prompt.out()
      << "\nType one reading, or several with spaces between; the middle one is used.\n"
      << "Enter leaves a measurement out, \"back\" goes to the one before, \"?\" tells what\n"
      << "it is for, \"save\" ends. Whatever you entered is kept.\n";
  const std::vector<MeasurementName> names = still_to_take(form);
  for (std::size_t i = 0; i < names.size();) {
    if (i == kFirstMeasurements && names.size() == kMeasurementCount) {
      prompt.out()
          << "\nThat is enough for a good first block. The others make it better; what is\n"
          << "left out is estimated.\n";
    }
    prompt.out() << "\n"
                 << i + 1 << " of " << names.size() << "  " << question_of(form, names[i]).name
                 << "\n";
    const GoesOn answered = ask_measurement(prompt, form, names[i]);
    if (answered == GoesOn::Save) return;
    if (answered == GoesOn::Next) {
      ++i;
    } else if (i > 0) {
      --i;
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
  prompt.out() << "Next: blockwright draft " << path << "\n";
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
