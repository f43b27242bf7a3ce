#pragma once

#include <string>
#include <vector>

namespace blockwright {

/// Ends the reading of a file: throws InputError with these fields.
[[noreturn]] void refuse(std::string code, std::string where, std::string message, std::string hint,
                         std::vector<std::string> options = {});

/// A piece of a file as a message may show it: at most 40 bytes, whole characters, no control
/// characters.
std::string shown(std::string_view text);

}  // namespace blockwright
