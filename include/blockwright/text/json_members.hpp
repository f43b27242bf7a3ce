#pragma once

#include "blockwright/text/json_document.hpp"

#include <span>
#include <string>
#include <string_view>

namespace blockwright {

/// Refuses ("<kind>.key") the first key of the object that is not known there, naming the place
/// where it belongs, the key that was likely meant, or all known ones.
void check_keys(const JsonDocument& document, const JsonValue& object,
                std::span<const std::string_view> known);

/// Refuses what is no object ("<kind>.type") or does not say the format of its kind of file
/// ("<kind>.missing", "<kind>.format"; for "Format" or "fromat" as check_keys()).
void check_format(const JsonDocument& document, std::span<const std::string_view> known);

/// The member of that key; refuses ("<kind>.missing") an object without it.
const JsonValue& required(const JsonDocument& document, const JsonValue& object,
                          std::string_view key, std::string hint);

/// The member "date" of a session or a fitting. Throws InputError ("<kind>.missing",
/// "<kind>.type", "<kind>.date").
std::string read_date(const JsonDocument& document, const JsonValue& object);

}  // namespace blockwright
