#pragma once

#include "blockwright/measure/client.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

// Changes to the text of a client file that lose nothing: numbers as they were typed, the order of
// the keys, spaces and line ends stay as they are, byte for byte; what is added follows the file's
// own indent, line ends and unit. These functions open no file: they take the whole text of one and
// give the whole new text.
//
// Guarantees: (1) the old text is a subsequence of the new one, but for the mark of a correction
// that is made active again, for an answer on the new tape that is changed, and for a null or
// readings in the place of which readings are put; (2) reading the new text gives the old client
// and what was added: it is read again as proof. Errors: InputError, as reading a client file has
// them, for the text and for what is to be added. Cost: linear in the text.

/// The whole text of a client file, and the file's name for messages.
struct ClientText {
  std::string_view text;
  std::string_view file;
};

/// A correction to be added. Numbers are given as typed, in the file's unit: "1.0", "1/2".
struct NewCorrection {
  std::string action;
  std::string place;
  std::string by;
  std::optional<AmountAs> as;  ///< written only if given
  BodySide side = BodySide::Both;
  std::string seen;
};

/// The fitting that a correction belongs to: made if the file has none of that date and toile.
struct FittingOf {
  std::string date;
  int toile = 1;
  std::string by;    ///< added if not empty and not in the file; may not contradict the file
  std::string note;  ///< the same
};

/// One measurement of a session to be added, its readings as typed.
struct NewReadings {
  MeasurementName name;
  std::vector<std::string> values;  ///< none: null, to be filled in
};

struct NewSession {
  std::string date;
  std::string by;
  std::vector<NewReadings> tape;  ///< written in this order
};

/// The text with the correction as the last one of its fitting. A new fitting stands in its place
/// by toile and date. Errors beyond those of reading: "client.order" if it has no such place,
/// "client.duplicate" if `by` or `note` is not what the file says.
std::string with_correction(const ClientText& client, const FittingOf& fitting,
                            const NewCorrection& correction);

/// The text with who fitted and a note in that fitting, which is made without a correction if the
/// file has none of that date and toile. Errors as of with_correction().
std::string with_fitting(const ClientText& client, const FittingOf& fitting);

/// Why a client file cannot keep these words for what was seen; nothing if it can.
std::optional<Problem> fault_of_seen(std::string_view seen);

/// The text with the number-th correction, counted from 1 over all fittings in the order of the
/// file, marked as withdrawn, or active again. Withdrawing and making active again gives the same
/// bytes. Error: "client.correction" if there is none of that number.
std::string with_withdrawn(const ClientText& client, std::size_t number);
std::string with_active(const ClientText& client, std::size_t number);

/// The text with the answer what becomes of the number-th correction once a newer tape session has
/// some of what it asked for. Requires: the answer is not Ask. Error:
/// "client.correction" if there is none of that number.
std::string with_new_tape(const ClientText& client, std::size_t number, AfterNewTape after);

/// An amount as a client file has it, rounded to 0.1 mm, or 0.001 of an inch.
Length as_written_in_file(Length amount, Unit unit);

/// The text with the session as the last one of its list. Error beyond those of reading:
/// "client.duplicate" if there is a session of that date.
std::string with_session(const ClientText& client, const NewSession& session);

/// The text with more measurements in the session of that date, in the place of their nulls or
/// behind those that it has. Errors beyond those of reading: "client.duplicate" if it has one of
/// them already, "client.session" if there is no session of that date.
std::string with_readings(const ClientText& client, const std::string& date,
                          const std::vector<NewReadings>& more);

/// The same, but that readings which the session has already are replaced.
std::string with_retaken(const ClientText& client, const std::string& date,
                         const std::vector<NewReadings>& taken);

/// The text of a client file with one session.
struct NewClient {
  std::string name;
  Unit unit = Unit::Cm;
  NewSession session;
};
/// It is read as proof; `file` names it in messages.
std::string new_client_text(const NewClient& client, std::string_view file);

/// The text of a client file with the keys of all measurements in the order of a session, and null
/// in the place of each value.
struct BlankClient {
  std::string name;
  Unit unit = Unit::Cm;
  std::string date;
};
std::string blank_client_text(const BlankClient& blank, std::string_view file);

}  // namespace blockwright
