#include "tape_prompt.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "prompt.hpp"

#include <algorithm>
#include <functional>
#include <sstream>
#include <vector>

namespace blockwright {
namespace {

/// What is known of the session before the first measurement is asked for.
struct TapeForm {
  std::string text;  ///< of the client file; empty: there is none yet
  std::string name;  ///< of a new client
  Unit unit = Unit::Cm;
  std::string date, by;
  bool continued = false;  ///< the file has a session of that date
  Session taken;           ///< what that session has, and what is entered
  std::optional<Session> earlier;
  std::vector<NewReadings> entered;
};

/// Nothing more is asked once the input has ended.
struct InputEnded {};

std::string trimmed_answer(const std::string& line) {
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
      return trimmed_answer(*line);
    } catch (const UsageError& error) {
      say(prompt, error.problem());
    }
  }
}

/// Asks until `accept` refuses nothing.
std::string asked_until(const Prompt& prompt, const std::string& question,
                        const std::function<void(const std::string&)>& accept) {
  for (;;) {
    const std::string answer = asked(prompt, question);
    try {
      accept(answer);
      return answer;
    } catch (const InputError& error) {
      say(prompt, error.problem());
    }
  }
}

/// Refuses what no client file may have: its reader is asked.
void require_readable(const std::string& name, const std::string& date, const std::string& by) {
  (void)new_client_text({name, Unit::Cm, {date, by, {{MeasurementName::BustGirth, {"90"}}}}},
                        "this answer");
}

constexpr const char* kAnyName = "A";
constexpr const char* kAnyDate = "2000-01-01";

bool is_there(const std::string& path, FileStore& files) {
  const std::string name = path.substr(path.find_last_of('/') + 1);
  try {
    const auto found = files.list(folder_of(path), name, Listing::Folder);
    return std::ranges::any_of(found, [&](const std::string& other) {
      return other.substr(other.find_last_of('/') + 1) == name;
    });
  } catch (const FileError&) {
    return false;  // no such folder
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

void begin_new_client(const TapeJob& job, const Prompt& prompt, TapeForm& form) {
  prompt.out() << shown_place(job.client) << " is not there yet: a new person.\n";
  form.name = asked_until(prompt, "Her name",
                          [](const std::string& name) { require_readable(name, kAnyDate, ""); });
  form.unit = job.unit ? *job.unit : asked_unit(prompt);
}

void ask_date(const TapeJob& job, const std::string& today, const Prompt& prompt, TapeForm& form) {
  form.date = job.date;
  if (!form.date.empty()) require_readable(kAnyName, form.date, "");
  while (form.date.empty()) {
    const std::string answer = asked(prompt, "Date of this session (Enter: " + today + ")");
    try {
      require_readable(kAnyName, answer.empty() ? today : answer, "");
      form.date = answer.empty() ? today : answer;
    } catch (const InputError& error) {
      say(prompt, error.problem());
    }
  }
}

/// What the file has of that date, and the newest session before it.
void look_up_sessions(const Client& client, const Prompt& prompt, TapeForm& form) {
  for (const Session& session : client.sessions) {
    if (session.date < form.date) form.earlier = session;
    if (session.date != form.date) continue;
    form.continued = true;
    form.taken = session;
    prompt.out() << "The file has a session of that date: what it has not got yet is asked.\n";
  }
}

TapeForm opened(const TapeJob& job, const std::string& today, FileStore& files,
                const Prompt& prompt) {
  TapeForm form;
  if (!is_there(job.client, files)) {
    begin_new_client(job, prompt, form);
    ask_date(job, today, prompt, form);
  } else {
    form.text = files.read(job.client);
    std::istringstream in(form.text);
    const Client client = read_client(in, job.client);
    form.unit = client.unit;
    prompt.out() << printable(client.name) << ", in " << unit_name(form.unit) << "\n";
    ask_date(job, today, prompt, form);
    look_up_sessions(client, prompt, form);
  }
  form.by = job.by;
  if (form.by.empty() && !form.continued) {
    form.by = asked_until(prompt, "Who holds the tape? (Enter: leave it out)",
                          [](const std::string& by) { require_readable(kAnyName, kAnyDate, by); });
  }
  return form;
}

/// One measurement on its way: which of those to take it is.
struct Turn {
  MeasurementName name;
  std::size_t number = 0, of = 0;
};

std::string unit_of_reading(MeasurementName name, Unit unit) {
  if (info(name).kind == MeasurementKind::Angle) return "degrees";
  return std::string(unit_name(unit));
}

std::string value_text(Measure value, Unit unit) {
  return value.is_angle() ? angle_text(value.angle()) : length_text(value.length(), unit);
}

void show_measurement(const Prompt& prompt, const TapeForm& form, const Turn& turn) {
  const MeasurementInfo& entry = info(turn.name);
  prompt.out() << "\n" << turn.number << " of " << turn.of << "  " << name_text(entry.key) << "\n";
  say(prompt, entry.how);
  std::string known;
  if (form.earlier && form.earlier->tape[turn.name]) {
    known = "On " + form.earlier->date + " it was " +
            value_text(form.earlier->tape[turn.name]->median(), form.unit) + ". ";
  }
  Session others = form.taken;
  others.tape[turn.name].reset();
  if (const auto range = expected_range(others, turn.name)) {
    known += "By what you took it is most likely between " + value_text(range->least, form.unit) +
             " and " + value_text(range->most, form.unit) + ".";
  }
  if (!known.empty()) say(prompt, known);
  if (const auto& now = form.taken.tape[turn.name]) {
    say(prompt, "You entered " + value_text(now->median(), form.unit) + "; Enter keeps it.");
  }
}

void keep(TapeForm& form, MeasurementName name, const TypedReadings& typed) {
  form.taken.tape[name] = typed.readings;
  const auto old = std::ranges::find(form.entered, name, &NewReadings::name);
  if (old != form.entered.end()) {
    old->values = typed.typed;
  } else {
    form.entered.push_back({name, typed.typed});
  }
}

/// What the person does at a measurement.
enum class Answered { Next, Back, Save };

/// Takes readings. They are judged at once; unlikely ones are asked for once more, and kept if they
/// are typed again or Enter is pressed.
void take(const Prompt& prompt, TapeForm& form, const Turn& turn, std::string answer) {
  std::string doubted;
  const std::string again =
      "  Type it again, or Enter to keep it, " + unit_of_reading(turn.name, form.unit);
  for (;;) {
    const TypedReadings typed = readings_typed(answer, turn.name, form.unit);
    keep(form, turn.name, typed);
    if (answer == doubted) return;
    Session others = form.taken;
    others.tape[turn.name].reset();
    const Remarks remarks =
        remarks_on(typed, turn.name, others, form.earlier ? &*form.earlier : nullptr, form.unit);
    for (const std::string& sentence : remarks.sentences) say(prompt, sentence);
    if (!remarks.ask_again) return;
    doubted = answer;
    answer = asked(prompt, again);
    if (answer.empty()) return;
  }
}

Answered ask_measurement(const Prompt& prompt, TapeForm& form, const Turn& turn) {
  show_measurement(prompt, form, turn);
  const std::string question =
      name_text(info(turn.name).key) + ", " + unit_of_reading(turn.name, form.unit);
  for (;;) {
    const std::string answer = asked(prompt, question);
    if (answer == "back") return Answered::Back;
    if (answer == "save") return Answered::Save;
    const bool needed = turn.name == MeasurementName::BustGirth && !form.taken.tape[turn.name];
    if ((answer.empty() || answer == "skip") && !needed) return Answered::Next;
    try {
      if (answer == "?") {
        say(prompt, "It closes " + std::string(info(turn.name).closes) + ".");
      } else if (answer.empty() || answer == "skip") {
        say(prompt, "The bust girth is the one measurement that is needed.");
      } else {
        take(prompt, form, turn, answer);
        return Answered::Next;
      }
    } catch (const InputError& error) {
      say(prompt, error.problem());
    }
  }
}

std::vector<MeasurementName> still_to_take(const TapeForm& form) {
  std::vector<MeasurementName> names;
  std::ranges::copy_if(tape_order(), std::back_inserter(names),
                       [&](MeasurementName name) { return !form.taken.tape[name]; });
  return names;
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
    const Answered answered = ask_measurement(prompt, form, {names[i], i + 1, names.size()});
    if (answered == Answered::Save) return;
    if (answered == Answered::Next) {
      ++i;
    } else if (i > 0) {
      --i;
    }
  }
}

std::string new_text(const TapeJob& job, const TapeForm& form) {
  const NewSession session{form.date, form.by, form.entered};
  if (form.text.empty()) return new_client_text({form.name, form.unit, session}, job.client);
  const ClientText old{form.text, job.client};
  return form.continued ? with_readings(old, form.date, form.entered) : with_session(old, session);
}

bool save(const TapeJob& job, const TapeForm& form, FileStore& files, const Prompt& prompt) {
  const std::string path = shown_place(job.client);
  if (!form.taken.tape[MeasurementName::BustGirth] || form.entered.empty()) {
    prompt.out() << "\nNothing is written: "
                 << (form.entered.empty() ? "nothing was entered" : "the bust girth is missing")
                 << ".\n";
    return false;
  }
  const std::string text = new_text(job, form);
  if (form.text.empty()) {
    files.write(job.client, text);
  } else {
    files.write_all({{job.client + ".bak", form.text}, {job.client, text}});
  }
  const std::size_t count = form.entered.size();
  prompt.out() << "\nWritten into " << path << ": " << count
               << (count == 1 ? " measurement" : " measurements") << " of " << form.date << ".\n";
  if (!form.text.empty()) prompt.out() << "The text before it is " << path << ".bak\n";
  prompt.out() << "Next: blockwright draft " << path << "\n";
  return true;
}

}  // namespace

bool ask_for_tape(const TapeJob& job, const std::string& today, FileStore& files, std::istream& in,
                  std::ostream& out) {
  const Prompt prompt(in, out);
  TapeForm form;
  try {
    form = opened(job, today, files, prompt);
    ask_measurements(prompt, form);
  } catch (const InputEnded&) {
    out << "\n";
  }
  return save(job, form, files, prompt);
}

}  // namespace blockwright
