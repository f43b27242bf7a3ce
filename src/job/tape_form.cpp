#include "blockwright/job/tape_form.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/files/safe_name.hpp"
#include "blockwright/job/options.hpp"
#include "blockwright/text/units.hpp"
#include "option_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <sstream>

namespace blockwright {
namespace {

constexpr const char* kAnyName = "A";
constexpr const char* kAnyDate = "2000-01-01";

/// Refuses what no client file may have: its reader is asked.
void require_readable(const std::string& name, const NewSession& session) {
  NewSession with_bust = session;
  with_bust.tape = {{MeasurementName::BustGirth, {"90"}}};
  (void)new_client_text({name, Unit::Cm, with_bust}, "this answer");
}

std::string file_name(const std::string& path) { return path.substr(path.find_last_of('/') + 1); }

bool is_there(const std::string& path, FileStore& files) {
  const std::string name = file_name(path);
  const Listing which = name.starts_with('.') ? Listing::Hidden : Listing::Folder;
  try {
    const auto found = files.list(folder_of(path), name, which);
    return std::ranges::any_of(found,
                               [&](const std::string& other) { return file_name(other) == name; });
  } catch (const FileError&) {
    return false;  // no such folder
  }
}

Client read_again(const ClientText& file) {
  std::istringstream in{std::string(file.text)};
  return read_client(in, file.file, Unfinished::Kept);
}

std::string taped_text(Measure value, Unit unit) {
  return value.is_angle() ? angle_text(value.angle()) : length_text(value.length(), unit);
}

Session without(Session session, MeasurementName name) {
  session.tape[name].reset();
  return session;
}

std::string known_of(const TapeForm& form, MeasurementName name) {
  std::string known;
  if (form.earlier && form.earlier->tape[name]) {
    known = "On " + form.earlier->date + " it was " +
            taped_text(form.earlier->tape[name]->median(), form.unit) + ".";
  }
  if (const auto range = expected_range(without(form.taken, name), name)) {
    known += known.empty() ? "" : " ";
    known += "Going by what you took, it is most likely between " +
             taped_text(range->least, form.unit) + " and " + taped_text(range->most, form.unit) +
             ".";
  }
  return known;
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

const NewReadings* entered_of(const TapeForm& form, MeasurementName name) {
  const auto found = std::ranges::find(form.entered, name, &NewReadings::name);
  return found == form.entered.end() ? nullptr : &*found;
}

/// As it was entered: "63 in" would not do for 62 63/64.
std::string value_of(const TapeForm& form, MeasurementName name) {
  const bool angle = info(name).kind == MeasurementKind::Angle;
  if (const NewReadings* entered = entered_of(form, name)) {
    return fmt::format("{} {}", fmt::join(entered->values, ", "),
                       angle ? "degrees" : unit_name(form.unit));
  }
  const auto& known = form.taken.tape[name];
  return known ? taped_text(known->median(), form.unit) : "";
}

/// The date of a session that nothing can be drafted from yet; empty if there is none.
std::string begun_in(const Client& client) {
  const auto begun = std::ranges::find_if(client.sessions, [](const Session& session) {
    return !session.tape[MeasurementName::BustGirth];
  });
  return begun == client.sessions.end() ? "" : begun->date;
}

std::string figure_words(MeasurementName name) {
  return "figure " + std::string(figure_title(figure_of(name))) + ", number " +
         std::to_string(tape_number(name));
}

bool has_session(const Client& client, const std::string& date) {
  return std::ranges::find(client.sessions, date, &Session::date) != client.sessions.end();
}

/// What was entered, put into the text of the file as it is now.
std::string new_text(const TapeForm& form, const std::string& now) {
  const NewSession session{form.date, form.by, form.entered};
  if (now.empty()) return new_client_text({form.name, form.unit, session}, form.path);
  const ClientText old{now, form.path};
  if (!has_session(read_again(old), form.date)) return with_session(old, session);
  std::vector<NewReadings> more, again;
  for (const NewReadings& taken : form.entered) {
    (form.in_file.tape[taken.name] ? again : more).push_back(taken);
  }
  const std::string text = with_readings(old, form.date, more);
  return with_retaken({text, form.path}, form.date, again);
}

/// Before anything is asked.
void judge_words(const TapeJob& job) {
  const auto judged = [](const char* option, const NewSession& session) {
    try {
      require_readable(kAnyName, session);
    } catch (const InputError& error) {
      refuse_option(option, error.problem().message.plain(), error.problem().hint.plain());
    }
  };
  if (!job.date.empty()) judged("--date", {.date = job.date, .by = "", .tape = {}});
  judged("--by", {.date = kAnyDate, .by = job.by, .tape = {}});
}

void require_her_unit(const TapeJob& job, Unit hers) {
  if (!job.unit || *job.unit == hers) return;
  refuse_option(
      "--unit",
      "her file is in " + std::string(unit_word(hers)) + ", and what is taken is written into it",
      "leave it out");
}

}  // namespace

void judge_tape(const TapeJob& job) {
  judge(job);
  judge_words(job);
  if (static_cast<int>(job.check) + static_cast<int>(job.sheet) + static_cast<int>(job.blank) > 1) {
    refuse_option(job.blank ? "--blank" : "--sheet", "two things are asked for at once",
                  "use one of --check, --sheet and --blank in a run");
  }
  if (job.all && !job.check) {
    refuse_option("--all", "it belongs to --check", "use both, or leave it out");
  }
  if (job.client.empty() && !job.sheet) {
    refuse_option("CLIENT", "no client file was named",
                  "`blockwright tape --help` shows how it is called");
  }
}

std::string as_argument(const std::string& path) {
  constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_./-+=@%,:";
  if (path.find_first_not_of(plain) == std::string::npos) return shown_place(path);
  std::string quoted;
  for (const char c : path) quoted += c == '\'' ? "'\\''" : std::string(1, c);
  return shown_place("'" + quoted + "'");
}

TapeForm open_tape(const TapeJob& job, FileStore& files) {
  TapeForm form;
  form.path = job.client;
  form.unit = job.unit.value_or(Unit::Cm);
  if (!is_there(job.client, files)) return form;
  form.text = files.read(job.client);
  const Client client = read_again({form.text, form.path});
  require_her_unit(job, client.unit);
  form.name = client.name;
  form.unit = client.unit;
  form.begun = begun_in(client);
  return form;
}

void name_client(TapeForm& form, const std::string& name) {
  require_readable(name, {.date = kAnyDate, .by = "", .tape = {}});
  form.name = name;
}

void date_session(TapeForm& form, const std::string& date) {
  require_readable(kAnyName, {.date = date, .by = "", .tape = {}});
  form.date = date;
  if (form.is_new_client()) return;
  for (const Session& session : read_again({form.text, form.path}).sessions) {
    const bool finished = session.tape[MeasurementName::BustGirth].has_value();
    if (session.date < date && finished) form.earlier = session;
    if (session.date != date) continue;
    form.continued = true;
    form.in_file = form.taken = session;
  }
}

void name_taker(TapeForm& form, const std::string& by) {
  require_readable(kAnyName, {.date = kAnyDate, .by = by, .tape = {}});
  form.by = by;
}

TapeRound round_of(const TapeForm& form) {
  TapeRound round{.names = {tape_order().begin(), tape_order().end()}};
  const auto is_in_file = [&](MeasurementName name) { return form.in_file.tape[name].has_value(); };
  const auto to_take = std::stable_partition(round.names.begin(), round.names.end(), is_in_file);
  round.in_file = static_cast<std::size_t>(to_take - round.names.begin());
  return round;
}

TapeQuestion question_of(const TapeForm& form, MeasurementName name) {
  const MeasurementInfo& entry = info(name);
  const bool angle = entry.kind == MeasurementKind::Angle;
  return {name_text(entry.key),
          angle ? "degrees" : std::string(unit_name(form.unit)),
          std::string(entry.how),
          std::string(entry.closes),
          figure_words(name),
          tape_number(name),
          known_of(form, name),
          value_of(form, name),
          entered_of(form, name) != nullptr,
          name == MeasurementName::BustGirth && !form.in_file.tape[name]};
}

Remarks enter(TapeForm& form, MeasurementName name, const std::string& answer) {
  const auto& bust = form.taken.tape[MeasurementName::BustGirth];
  const TypedReadings typed =
      readings_typed(answer, name, form.unit, bust ? std::optional(bust->median()) : std::nullopt);
  keep(form, name, typed);
  const Session* earlier = form.earlier ? &*form.earlier : nullptr;
  return remarks_on(typed, name, without(form.taken, name), earlier, form.unit);
}

void take_out(TapeForm& form, MeasurementName name) {
  std::erase_if(form.entered, [&](const NewReadings& taken) { return taken.name == name; });
  form.taken.tape[name] = form.in_file.tape[name];
}

std::string missing_from(const TapeForm& form) {
  if (form.entered.empty()) return "nothing was entered";
  return form.taken.tape[MeasurementName::BustGirth] ? "" : "the bust girth is missing";
}

void save_tape(const TapeForm& form, FileStore& files) {
  in_its_place([&] {
    const auto held = files.lock(folder_of(form.path));
    // A session takes a while: she may have changed the file meanwhile.
    const std::string now = is_there(form.path, files) ? files.read(form.path) : "";
    const std::string text = new_text(form, now);
    if (now.empty()) {
      files.write(form.path, text);
    } else {
      files.write_all({{form.path + ".bak", now}, {form.path, text}});
    }
  });
}

}  // namespace blockwright
