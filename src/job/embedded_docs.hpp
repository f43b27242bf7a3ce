#pragma once

#include <string_view>

namespace blockwright::docs {

/// Pages of docs/ that are built into the program, as the files have them.
std::string_view problems();
std::string_view client_schema();
std::string_view pattern_schema();
std::string_view report_schema();
std::string_view style_schema();

}  // namespace blockwright::docs
