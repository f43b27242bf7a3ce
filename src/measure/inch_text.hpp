#pragma once

#include <optional>
#include <string_view>

namespace blockwright {

/// Inches as a tape shows them: "36", "36 1/2" or "1/2", a minus sign in front allowed; halves down
/// to 64ths. Empty if the text is none of these.
std::optional<double> inches_of(std::string_view text);

}  // namespace blockwright
