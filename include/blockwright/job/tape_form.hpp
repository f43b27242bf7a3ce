#pragma once

#include "blockwright/job/job.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "blockwright/measure/tape_session.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// A tape session while it is taken: what is known of it, and what was entered. A program that asks
/// fills it in; only save_tape() writes.
struct TapeForm {
  std::string path;  ///< of the client file
  std::string text;  ///< of it as it was opened; empty: there was none
  std::string name;  ///< of the client
  Unit unit = Unit::Cm;
  std::string begun;  ///< date of a session that still wants its bust girth; may be empty
  std::string date, by;
  bool continued = false;          ///< the file has a session of that date, which goes on
  Session in_file;                 ///< what that session has
  Session taken;                   ///< that, and what is entered
  std::optional<Session> earlier;  ///< the newest one before it
  std::vector<NewReadings> entered;

  [[nodiscard]] bool is_new_client() const { return text.empty(); }
};

/// Refuses a job that is out of its limits, asks for two things at once, has a date or name that no
/// client file may have, or names no client where one is needed: UsageError "job.value".
void judge_tape(const TapeJob& job);

/// Opens the client file, or begins a form for a new one where there is none. Throws as reading it.
TapeForm open_tape(const TapeJob& job, FileStore& files);

/// A path as a word of a command line that can be copied: in quotes where a shell needs them.
std::string as_argument(const std::string& path);

/// What is known of the session before the first measurement. Each throws InputError where no
/// client file may have it.
void name_client(TapeForm& form, const std::string& name);
void date_session(TapeForm& form, const std::string& date);
void name_taker(TapeForm& form, const std::string& by);

/// All measurements: those that the file's session has, then those to be taken, either in the order
/// of a session.
struct TapeRound {
  std::vector<MeasurementName> names;
  std::size_t in_file = 0;  ///< so many of them the file has
};
TapeRound round_of(const TapeForm& form);

/// A measurement as it is asked for, in the person's unit.
struct TapeQuestion {
  std::string name;      ///< "bust girth"
  std::string unit;      ///< "cm", "in" or "degrees"
  std::string how;       ///< how it is taken
  std::string closes;    ///< what of the draft it settles
  std::string figure;    ///< where docs/tape.md draws it: "figure Back, number 4"
  int number = 0;        ///< that number
  std::string known;     ///< the last session's value and where it is expected; may be empty
  std::string value;     ///< what is entered, or what the file has: "74, 74.5 cm"; may be empty
  bool entered = false;  ///< whether it is entered
  bool needed = false;   ///< whether nothing can be written without its being entered
};
TapeQuestion question_of(const TapeForm& form, MeasurementName name);

/// Enters an answer, and gives what is to be said of it. Throws InputError "tape.reading", and then
/// nothing is entered.
Remarks enter(TapeForm& form, MeasurementName name, const std::string& answer);

/// Takes what was entered of a measurement out of the form again; what the file has stays.
void take_out(TapeForm& form, MeasurementName name);

/// Why a form cannot be saved; empty if it can.
std::string missing_from(const TapeForm& form);
/// Writes what was entered into the client file as it is now, in the place of what it had of the
/// same measurements when it was opened, the text before it beside it with
/// ".bak" behind its name, both or none. Throws FileError, and InputError where the file has been
/// changed so that this cannot be added. Requires: nothing is missing from the form.
void save_tape(const TapeForm& form, FileStore& files);

}  // namespace blockwright
