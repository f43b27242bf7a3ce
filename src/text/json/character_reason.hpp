#pragma once

#include "reason.hpp"

#include <optional>
#include <string_view>

namespace blockwright {

/// Why the character at byte `at` cannot come between the tokens of a JSON text: it looks like a
/// plain one, is invisible, or is no character at all. Empty if it is nothing like that.
std::optional<Reason> why_not_character(std::string_view text, std::size_t at);

/// Why the character at byte `at` cannot be inside a JSON text in quotes; empty if it can.
std::optional<Reason> why_not_in_text(std::string_view text, std::size_t at);

}  // namespace blockwright
