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
  Session taken;                   ///< what that session has, and what is entered
  std::optional<Session> earlier;  ///< the newest one before it
  std::vector<NewReadings> entered;

  [[nodiscard]] bool is_new_client() const { return text.empty(); }
};

/// Refuses a job that is out of its limits, asks for two things at once, or names no client where
/// one is needed: UsageError "job.value".
void judge_tape(const TapeJob& job);

/// Opens the client file, or begins a form for a new one where there is none. Throws as reading it.
TapeForm open_tape(const TapeJob& job, FileStore& files);

/// What is known of the session before the first measurement. Each throws InputError where no
/// client file may have it.
void name_client(TapeForm& form, const std::string& name);
void date_session(TapeForm& form, const std::string& date);
void name_taker(TapeForm& form, const std::string& by);

/// What the session has not got yet, in the order in which it is taken.
std::vector<MeasurementName> still_to_take(const TapeForm& form);

/// A measurement as it is asked for, in the person's unit.
struct TapeQuestion {
  std::string name;    ///< "bust girth"
  std::string unit;    ///< "cm", "in" or "degrees"
  std::string how;     ///< how it is taken
  std::string closes;  ///< what of the draft it settles
  std::string figure;  ///< where docs/tape.md draws it: "figure Back, number 4"
  std::string known;   ///< the last session's value and where it is expected; may be empty
  std::string now;     ///< what was entered before; may be empty
};
TapeQuestion question_of(const TapeForm& form, MeasurementName name);

/// Enters an answer, and gives what is to be said of it. Throws InputError "tape.reading", and then
/// nothing is entered.
Remarks enter(TapeForm& form, MeasurementName name, const std::string& answer);

/// Why a form cannot be saved; empty if it can.
std::string missing_from(const TapeForm& form);
/// Writes what was entered into the client file as it is now, the text before it beside it with
/// ".bak" behind its name, both or none. Throws FileError, and InputError where the file has been
/// changed so that this cannot be added. Requires: nothing is missing from the form.
void save_tape(const TapeForm& form, FileStore& files);

}  // namespace blockwright
