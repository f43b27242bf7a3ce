#pragma once

#include "json_document.hpp"

#include <string>

namespace blockwright {

/// The member of that key; refuses ("client.missing") an object without it.
const JsonValue& required(const JsonDocument& document, const JsonValue& object,
                          std::string_view key, std::string hint);

/// The member "date" of a session or a fitting. Throws InputError ("client.missing", "client.type",
/// "client.date").
std::string read_date(const JsonDocument& document, const JsonValue& object);

}  // namespace blockwright
