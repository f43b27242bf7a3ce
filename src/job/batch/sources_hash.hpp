#pragma once

#include <string_view>

namespace blockwright {

/// A hash of the sources that this program was built of: a program that draws by other rules has
/// another one.
std::string_view sources_hash();

}  // namespace blockwright
