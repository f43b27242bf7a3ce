#include "blockwright/text/refuse.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

using enum Stop::After;

constexpr std::string_view kMembers = "write members as \"key\": value, with commas between them";
constexpr std::string_view kBareNumber =
    "write the bare number: 92.5; inch fractions as texts: \"36 1/2\"";

// The first comma or colon behind the last token that has no place there; npos if there is none.
std::size_t misplaced_separator(std::string_view text, const Stop& stop) {
  char expected = stop.after == Key ? ':' : stop.after == Value ? ',' : '\0';
  for (std::size_t i = stop.end; i < stop.next; ++i) {
    if (is_space(text.substr(i, 1))) continue;
    if (text[i] != expected) return i;
    expected = '\0';
  }
  return std::string_view::npos;
}

Reason why_not_colon(const Stop& stop, bool second) {
  if (stop.after == Key && second) return {"a colon follows a colon", "take one of them away"};
  if (stop.in_list) {
    return {"there is a colon in a list",
            "close the list with ] before the next key; readings of a list have no keys"};
  }
  if (stop.after == Value && !second) {
    return {"there is a colon after a value", std::string(kMembers)};
  }
  return {"a key is missing before this colon", std::string(kMembers)};
}

Reason why_not_comma(const Stop& stop, bool second) {
  if (stop.after == Key && second) {
    return {"a value is missing before this comma",
            "write the value, or take the key away if the measurement was not taken"};
  }
  if (stop.after == Key) return {"a colon is missing after the key", std::string(kMembers)};
  if (second) return {"a comma follows a comma", "take one of them away"};
  return {"there is a comma before the first value", "take the comma away"};
}

// What stands at byte `at`: a text in quotes as a whole.
std::string_view token_at(std::string_view text, std::size_t at) {
  if (text[at] != '"') return word_at(text, at);
  const std::size_t found = text.find_first_of("\"\n", at + 1);
  return text.substr(at, std::min(found, text.size() - 1) + 1 - at);
}

bool is_date_like(std::string_view word) {
  return word.size() >= 8 && word.find_first_not_of("0123456789-./") == std::string_view::npos;
}

Reason why_not_behind_number(std::string_view text, const Stop& stop) {
  const std::string_view number = text.substr(*stop.number, stop.end - *stop.number);
  const std::string_view rest = word_at(text, stop.next);
  const std::string whole =
      shown(text.substr(*stop.number, stop.next - *stop.number)) + shown(rest);
  const bool adjacent = stop.next == stop.end;
  Reason reason{fmt::format("{} follows the number {}", shown(rest), shown(number)),
                std::string(kBareNumber)};
  if (rest.size() > 1 && rest.find('/') != std::string_view::npos && is_digit(rest.back())) {
    reason = {fmt::format("the fraction {} is not in quotes", whole),
              "write inch fractions as texts: \"36 1/2\""};
  } else if (adjacent && is_digit(rest[0])) {
    reason.message = fmt::format("the number {} has a zero in front", whole);
  } else if (is_digit(rest[0]) && stop.in_list) {
    reason = {fmt::format("a comma is missing before {}", shown(rest)),
              "commas part the readings of a list: [74.0, 74.5]"};
  }
  if (adjacent && is_date_like(whole)) {
    reason = {fmt::format("the date {} is not in quotes", whole),
              "write it as a text, year-month-day: \"2026-03-14\""};
  }
  reason.of_last_value = !stop.in_list;
  return reason;
}

bool on_one_line(std::string_view text, const Stop& stop) {
  return text.substr(stop.end, stop.next - stop.end).find('\n') == std::string_view::npos;
}

bool is_about_number(std::string_view text, const Stop& stop) {
  const char first = text[stop.next];
  if (!stop.number || !on_one_line(text, stop) || first == '{' || first == '[') return false;
  return first != '"' || stop.next == stop.end;
}

}  // namespace

bool has_separator(std::string_view text, const Stop& stop) {
  return !is_space(text.substr(stop.end, stop.next - stop.end));
}

std::optional<Reason> why_not_separator(std::string_view text, const Stop& stop) {
  const std::size_t at = misplaced_separator(text, stop);
  if (at == std::string_view::npos) return std::nullopt;
  const bool second = !is_space(text.substr(stop.end, at - stop.end));
  Reason reason;
  if (stop.after == Whole && text[at] == ':') {
    reason = {"the braces round the client are missing", "begin the file with { and end it with }"};
  } else if (stop.after == Whole) {
    reason = {"there is a comma after the end of the client", "take the comma away"};
  } else {
    reason = text[at] == ':' ? why_not_colon(stop, second) : why_not_comma(stop, second);
  }
  reason.at = at;
  return reason;
}

Reason why_not_behind(std::string_view text, const Stop& stop) {
  const std::string word = shown(token_at(text, stop.next));
  if (stop.after == Key) {
    const bool equals = word[0] == '=';
    return {equals ? "there is an equals sign in place of the colon"
                   : fmt::format("a colon is missing before {}", word),
            std::string(kMembers)};
  }
  if (word[0] == ';') return {"there is a semicolon in place of a comma", std::string(kMembers)};
  if (is_about_number(text, stop)) return why_not_behind_number(text, stop);
  if (text[stop.end - 1] == '"' && on_one_line(text, stop)) {
    return {fmt::format("a comma is missing before {}", word),
            "part members by commas; write a quote inside a text as \\\""};
  }
  return {fmt::format("a comma is missing before {}", word), std::string(kMembers)};
}

}  // namespace blockwright
