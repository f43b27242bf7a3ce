#pragma once

#include "blockwright/base/error.hpp"

#include <string>
#include <string_view>

namespace blockwright {

/// A path as a shell needs it on a command line: in single quotes unless it is plain.
inline std::string for_shell(const std::string& path) {
  constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-./,:@%+=";
  if (!path.empty() && path.find_first_not_of(plain) == std::string::npos) return path;
  std::string quoted = "'";
  for (const char c : path) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

/// Worded problems whose hints name her file in a command, in the place of CLIENT: judging knows no
/// files.
inline Problems with_file(Problems problems, const std::string& path) {
  constexpr std::string_view command = "`blockwright tape CLIENT ";
  for (Problem& problem : problems) {
    std::string hint = problem.hint.plain();
    const std::size_t at = hint.find(command);
    if (at == std::string::npos) continue;
    hint.replace(at, command.size(), "`blockwright tape " + for_shell(path) + " ");
    problem.hint = hint;
  }
  return problems;
}

}  // namespace blockwright
