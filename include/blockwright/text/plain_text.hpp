#pragma once

#include "blockwright/text/json_document.hpp"

#include <string>

namespace blockwright {

/// Characters that a name may have.
inline constexpr std::size_t kMostTextLength = 100;

/// A text for people, as it can be printed: UTF-8 without control characters and lost letters, at
/// most `most` characters. Throws InputError ("client.type", "client.text", "client.size").
std::string read_plain_text(const JsonDocument& document, const JsonValue& value,
                            std::size_t most = kMostTextLength);

/// The same for a name, of which something must be seen.
std::string read_name(const JsonDocument& document, const JsonValue& value);

}  // namespace blockwright
