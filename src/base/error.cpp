#include "blockwright/base/error.hpp"

#include "blockwright/base/printable.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace blockwright {
namespace {

/// Values in a sentence are cut where they are put in; this stops what was forgotten.
constexpr std::size_t kLongestSentence = 2000;

std::string sentence(const Wording& wording) { return shown(wording.plain(), kLongestSentence); }

}  // namespace

std::string_view severity_name(Severity severity) {
  constexpr std::array<std::string_view, 3> names = {"note", "warning", "error"};
  return names[static_cast<std::size_t>(severity)];
}

bool has_errors(const Problems& problems) {
  return std::ranges::find(problems, Severity::Error, &Problem::severity) != problems.end();
}

std::string to_text(const Problem& problem) {
  std::string text(severity_name(problem.severity));
  text += " [" + shown(problem.code) + "] ";
  if (!problem.where.empty()) text += shown_place(problem.where) + ": ";
  text += sentence(problem.message);
  if (!problem.hint.empty()) text += " (" + sentence(problem.hint) + ")";
  return text;
}

Error::Error(Problem problem)
    : std::runtime_error(to_text(problem)), problem_(std::move(problem)) {}

void require(bool condition, const char* text) {
  if (!condition) throw std::logic_error(std::string("internal error: ") + text);
}

}  // namespace blockwright
