#include "blockwright/base/error.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace blockwright {
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

std::string_view severity_name(Severity severity) {
  constexpr std::array<std::string_view, 3> names = {"note", "warning", "error"};
  return names[static_cast<std::size_t>(severity)];
}

bool has_errors(const Problems& problems) {
  return std::ranges::find(problems, Severity::Error, &Problem::severity) != problems.end();
}

std::string to_text(const Problem& problem) {
  std::string text(severity_name(problem.severity));
  text += " [" + problem.code + "] ";
  if (!problem.where.empty()) text += problem.where + ": ";
  text += problem.message.plain();
  if (!problem.hint.empty()) text += " (" + problem.hint.plain() + ")";
  return printable(text);
}

Error::Error(Problem problem)
    : std::runtime_error(to_text(problem)), problem_(std::move(problem)) {}

void require(bool condition, const char* text) {
  if (!condition) throw std::logic_error(std::string("internal error: ") + text);
}

}  // namespace blockwright
