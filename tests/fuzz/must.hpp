#pragma once

#include "blockwright/base/error.hpp"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

/// One fuzz target: runs one input, whatever it holds. Ends the program where something that must
/// hold does not; an exception that leaves it does the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace blockwright_fuzz {

/// Ends the program with `what`, so that the input is kept as a finding.
inline void must(bool holds, const char* what, const std::string& detail = "") {
  if (holds) return;
  std::fprintf(stderr, "must hold: %s %s\n", what, detail.c_str());
  std::abort();
}

/// A refusal names its place, has a code of its family, and says what is wrong and how to mend it.
inline void must_tell(const blockwright::Problem& problem, std::string_view place,
                      std::string_view family) {
  const std::string text = to_text(problem);
  must(problem.where.starts_with(place), "a refusal names its place", text);
  must(problem.code.starts_with(family), "a refusal has a code of its family", text);
  must(!problem.message.empty() && !problem.hint.empty(), "a refusal has a cause and a cure", text);
}

}  // namespace blockwright_fuzz
