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

namespace {

/// Control characters, which a file name may hold, would move the cursor or break the line.
std::string printable(std::string text) {
  for (char& c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = '?';
  }
  return text;
}

}  // namespace

std::string to_text(const Problem& problem) {
  std::string text(severity_name(problem.severity));
  text += " [" + problem.code + "] ";
  if (!problem.where.empty()) text += problem.where + ": ";
  text += problem.message.plain();
  if (!problem.hint.empty()) text += " (" + problem.hint.plain() + ")";
  return printable(text);
}

}  // namespace blockwright
