#pragma once

#include "reason.hpp"

#include <string_view>

namespace blockwright {

/// What is wrong inside the text in quotes that begins at byte `at` of a JSON text.
/// Requires: the parser could not take that text.
Reason why_not_text(std::string_view text, std::size_t at);

}  // namespace blockwright
