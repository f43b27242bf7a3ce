#include "blockwright/base/problem.hpp"

#include <algorithm>

namespace blockwright {

std::string_view severity_name(Severity severity) {
  switch (severity) {
    case Severity::Note:
      return "note";
    case Severity::Warning:
      return "warning";
    case Severity::Error:
      return "error";
  }
  return "error";
}

bool has_errors(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& p) { return p.severity == Severity::Error; });
}

std::string to_text(const Problem& problem) {
  std::string text(severity_name(problem.severity));
  text += " [" + problem.code + "] ";
  if (!problem.where.empty()) text += problem.where + ": ";
  text += problem.message;
  if (!problem.hint.empty()) text += " (" + problem.hint + ")";
  return text;
}

}  // namespace blockwright
