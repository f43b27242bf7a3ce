#pragma once

#include "json_tokens.hpp"

#include <cstddef>
#include <optional>
#include <string>

namespace blockwright {

/// What the parser of a JSON text had taken when it could not go on.
struct Stop {
  enum class After { Nothing, Opening, Key, Value, Whole };

  After after = After::Nothing;
  bool in_list = false;  ///< the innermost open bracket is a list's
  std::size_t end = 0;   ///< of the last token taken; 0 if none was
  std::size_t next = 0;  ///< where the next token begins, commas and colons skipped
  std::optional<TokenCursor::Span> number{};  ///< the last token, if it was a number
};

/// Why a text is not JSON, and what cures it, for someone who never heard of JSON.
struct Reason {
  std::string message;
  std::string hint;
  std::optional<std::size_t> at{};  ///< the byte where it shows, if not at the next token
  bool of_last_value = false;       ///< it is about the value before, not about what comes next
};

}  // namespace blockwright
