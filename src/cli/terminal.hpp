#pragma once

#include "blockwright/base/printable.hpp"

#include <ostream>
#include <string_view>

namespace blockwright {

/// Prints lines that may hold names, texts or JSON: whatever they hold, the terminal gets nothing
/// that would move its cursor, recolour it or turn the order of letters round. Line feeds are sent;
/// who puts a name into a line escapes those of the name: printable(), shown_place().
inline void print(std::ostream& to, std::string_view lines) { to << printable_lines(lines); }

}  // namespace blockwright
