#pragma once

#include <string_view>

namespace blockwright {

/// Whether the text is a real day of the calendar written as ISO 8601 has it, "2026-03-14", between
/// the years 1900 and 2199.
bool is_date(std::string_view text);

}  // namespace blockwright
