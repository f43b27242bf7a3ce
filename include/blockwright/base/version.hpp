#pragma once

#include <string_view>

namespace blockwright {

/// The program's version, "major.minor.patch", as CMake's project() states it.
std::string_view version();

}  // namespace blockwright
