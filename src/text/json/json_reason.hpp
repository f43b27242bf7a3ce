#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// What the parser of a JSON text had taken when it could not go on.
struct Stop {
  enum class After { Nothing, Opening, Key, Value, Whole };

  After after = After::Nothing;
  bool in_list = false;                 ///< the innermost open bracket is a list's
  std::size_t end = 0;                  ///< of the last token taken; 0 if none was
  std::size_t next = 0;                 ///< where the next token begins, commas and colons skipped
  std::optional<std::size_t> number{};  ///< where the last token begins, if it was a number
};

/// Why a text is not JSON, and what cures it, for someone who never heard of JSON.
struct Reason {
  std::string message;
  std::string hint;
  std::optional<std::size_t> at{};  ///< the byte where it shows, if not at the next token
  bool of_last_value = false;       ///< it is about the value before, not about what comes next
};

/// Why the text is not JSON: judged from the token that the parser could not take and what stands
/// before it. Requires: the parser could not take it.
Reason why_not_json(std::string_view text, const Stop& stop);

// The parts that it is judged by.

/// Why the character at byte `at` cannot come between the tokens of a JSON text: it looks like a
/// plain one, is invisible, or is no character at all. Empty if it is nothing like that.
std::optional<Reason> why_not_character(std::string_view text, std::size_t at);

/// Why the character at byte `at` cannot be inside a JSON text in quotes; empty if it can.
std::optional<Reason> why_not_in_text(std::string_view text, std::size_t at);

/// What is wrong inside the text in quotes that begins at byte `at`. Requires: the parser could not
/// take that text.
Reason why_not_text(std::string_view text, std::size_t at);

/// Whether a comma or a colon stands between the last token taken and the next.
bool has_separator(std::string_view text, const Stop& stop);

/// What is wrong with the commas and colons before the next token; empty if one stands there that
/// may, or none.
std::optional<Reason> why_not_separator(std::string_view text, const Stop& stop);

/// What is wrong with a token that follows a key or a value without a colon or a comma.
/// Requires: the last token was a key or a value, and no separator follows it.
Reason why_not_behind(std::string_view text, const Stop& stop);

bool is_digit(char c);

/// Whether nothing but JSON's white space is in the text.
bool is_space(std::string_view text);

/// What stands at byte `at` of a text that is not JSON, up to a space, a separator, a bracket or a
/// quote behind it. Requires: at < text.size().
std::string_view word_at(std::string_view text, std::size_t at);

}  // namespace blockwright
