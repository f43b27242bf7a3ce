#pragma once

#include "blockwright/text/json_document.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

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

}  // namespace blockwright
