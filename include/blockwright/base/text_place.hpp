#pragma once

#include <string>
#include <string_view>

namespace blockwright {

/// Where the byte `at` of a text stands, as "line:column": both from 1, the column in characters of
/// UTF-8. At most one past the end.
std::string line_and_column(std::string_view text, std::size_t at);

}  // namespace blockwright
