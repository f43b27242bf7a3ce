#pragma once

#include "blockwright/base/wording.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// How much a finding about a body or a pattern matters.
/// Note: worth reading. Warning: look before cutting. Error: this pattern must not be cut.
enum class Severity { Note, Warning, Error };

/// "note", "warning" or "error".
std::string_view severity_name(Severity severity);

/// What a value was compared with; an end without a value was free.
struct Limit {
  std::optional<Measure> least = {};
  std::optional<Measure> most = {};
  std::optional<Measure> value = {};  ///< where rounding may make it read as the limit

  bool operator==(const Limit&) const = default;
};

/// A finding about the body or the pattern. Problems are values: they are collected and reported,
/// never thrown, and the run goes on where sense remains.
///
/// `code` is a stable dotted name, e.g. "measure.doubtful"; each is explained with cause and cure
/// in docs/problems.md and by `blockwright explain CODE`.
struct Problem {
  Severity severity = Severity::Note;
  std::string code;
  std::string where;                           ///< the measurement, piece, edge or point concerned
  Wording message;                             ///< what is so, with value and limit
  Wording hint;                                ///< what to do about it; may be empty
  std::vector<std::string> measurements = {};  ///< keys of those concerned: "bust_girth"
  std::vector<std::string> options = {};       ///< keys or options that the hint speaks of: "side"
  Limit limit = {};                            ///< that was passed, where there is one

  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

/// True if any problem is an Error.
bool has_errors(const Problems& problems);

/// One line for a person: "warning [code] where: message (hint)", printable and of limited length
/// (base/printable.hpp). Lengths are in mm: word the problem first (text/units.hpp) where a unit is
/// known.
std::string to_text(const Problem& problem);

/// Something about the run that cannot go on: no such file, bad JSON. Carries the same fields as a
/// Problem. Thrown low, caught once per client in a job and once in the program's main.
class Error : public std::runtime_error {
 public:
  explicit Error(Problem problem);
  [[nodiscard]] const Problem& problem() const { return problem_; }

 private:
  Problem problem_;
};

/// The call itself was wrong: unknown option value, missing argument. Exit code 2.
class UsageError : public Error {
 public:
  using Error::Error;
};

/// A file could not be read or written. `problem().where` names it.
class FileError : public Error {
 public:
  using Error::Error;
};

/// The content of an input file is not usable. `problem().where` names file, and line and column or
/// key.
class InputError : public Error {
 public:
  using Error::Error;
};

/// Stops the program when an invariant of its own is broken; always on, in every build.
/// Throws std::logic_error with the text: a bug, never the user's fault.
void require(bool condition, const char* text);

}  // namespace blockwright
