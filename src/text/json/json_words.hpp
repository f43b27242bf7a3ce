#pragma once

#include <cstddef>
#include <string_view>

namespace blockwright {

bool is_digit(char c);

/// Whether nothing but JSON's white space is in the text.
bool is_space(std::string_view text);

/// What stands at byte `at` of a text that is not JSON, up to a space, a separator, a bracket or a
/// quote behind it. Requires: at < text.size().
std::string_view word_at(std::string_view text, std::size_t at);

/// The same, but a text in quotes as a whole.
std::string_view token_at(std::string_view text, std::size_t at);

}  // namespace blockwright
