#pragma once

#include "blockwright/base/printable.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// Ends the reading of a file: throws InputError with these fields. What the message shows of the
/// file goes through shown().
[[noreturn]] void refuse(std::string code, std::string where, std::string message, std::string hint,
                         std::vector<std::string> options = {});

/// The known word that a mistyped one most likely means: the same but for case and hyphens, one
/// that begins with it, or the one fewest letters away (one in words of up to four letters, two or
/// a third of the letters in longer ones). Empty if none is near.
std::string_view nearest(std::string_view word, std::span<const std::string_view> known);

/// "did you mean "bust_girth"?", or the known words if none is near.
std::string did_you_mean(std::string_view word, std::span<const std::string_view> known);

}  // namespace blockwright
