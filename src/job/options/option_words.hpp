#pragma once

#include "blockwright/job/options.hpp"

#include <string>

namespace blockwright {

/// Throws UsageError "job.value" for an option: "--out".
[[noreturn]] void refuse_option(const std::string& name, const std::string& message,
                                const std::string& hint);

bool is_number(const Option& option);
/// "yes", "20", "svg"
std::string item_text(const OptionItem& item);
/// What an item must be: "a number of mm", "a known word".
std::string kind_words(const Option& option);
/// The values that it takes: "a number of mm from 0 to 60", "cm or in". Empty: any text.
std::string values_words(const Option& option);

}  // namespace blockwright
