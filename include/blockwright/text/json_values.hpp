#pragma once

#include "blockwright/text/json_document.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

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

/// Reads a value of a JSON file. Throws InputError: "<kind>.type" where it is of another kind, or a
/// whole number is wanted and it is none that an int holds.
void read_value(const JsonDocument& document, const JsonValue& value, std::string& into);
void read_value(const JsonDocument& document, const JsonValue& value, bool& into);
void read_value(const JsonDocument& document, const JsonValue& value, double& into);
void read_value(const JsonDocument& document, const JsonValue& value, int& into);

template <class Item>
void read_value(const JsonDocument& document, const JsonValue& value, std::optional<Item>& into) {
  read_value(document, value, into.emplace());
}

/// Throws "<kind>.type" for what is not a list.
void expect_list(const JsonDocument& document, const JsonValue& value);

template <class Item>
void read_value(const JsonDocument& document, const JsonValue& value, std::vector<Item>& into) {
  expect_list(document, value);
  into.assign(value.children.size(), Item());
  for (std::size_t i = 0; i < into.size(); ++i) {
    read_value(document, document.child(value, i), into[i]);
  }
}

/// The place of a word in a list. Throws "<kind>.value" for another word, naming the nearest.
std::size_t read_word(const JsonDocument& document, const JsonValue& value,
                      std::span<const std::string_view> words);

/// Characters that a name may have.
inline constexpr std::size_t kMostTextLength = 100;

/// A text for people, as it can be printed: UTF-8, each character printable (base/printable.hpp)
/// and none a lost letter, at most `most` characters. Throws InputError ("<kind>.type",
/// "<kind>.text", "<kind>.size").
std::string read_plain_text(const JsonDocument& document, const JsonValue& value,
                            std::size_t most = kMostTextLength);

/// The same for a name, of which something must be seen.
std::string read_name(const JsonDocument& document, const JsonValue& value);

}  // namespace blockwright
