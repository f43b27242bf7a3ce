#pragma once

#include <string_view>

namespace blockwright {

/// The TrueType file that is built into the program (Latin, Greek, Cyrillic and more), so that the
/// paper looks the same on every machine.
std::string_view builtin_font();

}  // namespace blockwright
