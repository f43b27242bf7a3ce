#pragma once

#include "reason.hpp"

#include <optional>
#include <string_view>

namespace blockwright {

/// Whether a comma or a colon stands between the last token taken and the next.
bool has_separator(std::string_view text, const Stop& stop);

/// What is wrong with the commas and colons before the next token; empty if one stands there that
/// may, or none.
std::optional<Reason> why_not_separator(std::string_view text, const Stop& stop);

/// What is wrong with a token that follows a key or a value without a colon or a comma.
/// Requires: the last token was a key or a value, and no separator follows it.
Reason why_not_behind(std::string_view text, const Stop& stop);

}  // namespace blockwright
