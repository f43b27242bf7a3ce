#pragma once

#include "json_document.hpp"

#include <span>
#include <string_view>

namespace blockwright {

/// Refuses ("client.key") the first key of the object that is not known there, naming the place
/// where it belongs, the key that was likely meant, or all known ones.
void check_keys(const JsonDocument& document, const JsonValue& object,
                std::span<const std::string_view> known);

/// Refuses a file that says "Format" or "fromat" for its first word. Requires: `root` is an object
/// without the key "format".
void refuse_misspelt_format(const JsonDocument& document, const JsonValue& root);

}  // namespace blockwright
