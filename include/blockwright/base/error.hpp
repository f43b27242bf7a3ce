#pragma once

#include "blockwright/base/problem.hpp"

#include <stdexcept>
#include <string>

namespace blockwright {

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
