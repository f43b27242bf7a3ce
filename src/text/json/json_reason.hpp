#pragma once

#include "reason.hpp"

#include <string_view>

namespace blockwright {

/// Why the text is not JSON: judged from the token that the parser could not take and what stands
/// before it. Requires: the parser could not take it.
Reason why_not_json(std::string_view text, const Stop& stop);

}  // namespace blockwright
