#include "key_check.hpp"

#include "blockwright/measure/fitting.hpp"
#include "client_keys.hpp"
#include "client_problem.hpp"
#include "nearest.hpp"
#include "odd_character.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

bool holds(std::span<const std::string_view> known, std::string_view key) {
  return std::ranges::find(known, key) != known.end();
}

// Where a known key belongs that stands in a wrong place; empty for an unknown one, and for an
// action that is short for a known one: "back" in a tape.
std::string right_place(std::string_view key, std::span<const std::string_view> known) {
  if (holds(correction_actions(), key) && !nearest(key, known).empty()) return {};
  if (holds(kClientKeys, key)) {
    return fmt::format("\"{}\" belongs at the top of the file, beside \"sessions\"", key);
  }
  if (holds(kSessionKeys, key)) {
    return fmt::format("\"{}\" belongs in a session: \"sessions\": [ {{ ... }} ]", key);
  }
  if (holds(measurement_keys(), key)) {
    return fmt::format("\"{}\" belongs in a session's tape: \"tape\": {{ ... }}", key);
  }
  if (holds(kFittingKeys, key)) {
    return fmt::format("\"{}\" belongs in a fitting: \"fittings\": [ {{ ... }} ]", key);
  }
  if (holds(kCorrectionKeys, key) || holds(correction_actions(), key)) {
    return fmt::format("\"{}\" belongs in a fitting's corrections: \"corrections\": [ {{ ... }} ]",
                       key);
  }
  return {};
}

[[noreturn]] void refuse_key(const JsonDocument& document, const JsonValue& member,
                             std::span<const std::string_view> known) {
  const std::string place = right_place(member.key, known);
  const std::string key = shown(member.key);
  const std::string message =
      place.empty() ? fmt::format("unknown key \"{}\"{}", key, odd_letter_note(member.key))
                    : fmt::format("the key \"{}\" has no place here", key);
  refuse("client.key", document.where_key(member), message,
         place.empty() ? did_you_mean(member.key, known) : place);
}

}  // namespace

void check_keys(const JsonDocument& document, const JsonValue& object,
                std::span<const std::string_view> known) {
  for (std::size_t i = 0; i < object.children.size(); ++i) {
    const JsonValue& member = document.child(object, i);
    if (!holds(known, member.key)) refuse_key(document, member, known);
  }
}

void refuse_misspelt_format(const JsonDocument& document, const JsonValue& root) {
  constexpr std::array<std::string_view, 1> format{"format"};
  for (std::size_t i = 0; i < root.children.size(); ++i) {
    const JsonValue& member = document.child(root, i);
    if (!nearest(member.key, format).empty()) refuse_key(document, member, kClientKeys);
  }
}

}  // namespace blockwright
