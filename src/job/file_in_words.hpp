#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/job/tape_form.hpp"

#include <string>
#include <string_view>

namespace blockwright {

/// Worded problems whose hints name her file in a command, in the place of CLIENT: judging knows no
/// files.
inline Problems with_file(Problems problems, const std::string& path) {
  constexpr std::string_view command = "`blockwright tape CLIENT ";
  for (Problem& problem : problems) {
    std::string hint = problem.hint.plain();
    const std::size_t at = hint.find(command);
    if (at == std::string::npos) continue;
    hint.replace(at, command.size(), "`blockwright tape " + as_argument(path) + " ");
    problem.hint = hint;
  }
  return problems;
}

}  // namespace blockwright
