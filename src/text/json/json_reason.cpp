#include "json_reason.hpp"

#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace blockwright {
namespace {

using enum Stop::After;

// Letters of any script: their bytes lie beyond ASCII.
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

Reason why_not_more(std::string_view text, std::size_t at) {
  if (text[at] == '}' || text[at] == ']') {
    return {fmt::format("there is a {} too many", text[at]),
            "take it away, or look for a bracket that closes too early"};
  }
  return {
      fmt::format("more text follows after the end of the client: {}", shown(word_at(text, at))),
      "one file holds one client; take the rest away"};
}

Reason why_not_bracket(std::string_view text, const Stop& stop) {
  const char bracket = text[stop.next];
  if (stop.after == Nothing) {
    return {fmt::format("the file begins with {}", bracket), "begin the client with {"};
  }
  if (has_separator(text, stop) && stop.after == Value) {
    return {fmt::format("there is a comma before {}", bracket), "take away the last comma"};
  }
  if (stop.after == Key) {
    return {fmt::format("a value is missing before {}", bracket),
            "write the value, or take the key away if the measurement was not taken"};
  }
  return {fmt::format("{} is where {} should close the open bracket", bracket,
                      stop.in_list ? ']' : '}'),
          "look for a bracket of the other kind"};
}

Reason why_not_word(std::string_view word) {
  constexpr std::array<std::string_view, 13> nothings{
      "NaN", "nan", "-NaN", "Infinity",  "-Infinity", "inf", "-inf",
      "nil", "NA",  "n/a",  "undefined", "N/A",       "None"};
  const bool null = word == "NULL" || word == "Null";
  if (null || std::ranges::find(nothings, word) != nothings.end()) {
    return {fmt::format("{} is not a number", shown(word)),
            "write the number; leave the key out if the measurement was not taken"};
  }
  return {fmt::format("{} is not in quotes", shown(word)),
          fmt::format("put keys and texts in double quotes: \"{}\"", shown(word))};
}

Reason why_not_number(std::string_view word, const Stop& stop) {
  const bool key_expected = !stop.in_list && stop.after != Key && stop.after != Nothing;
  if (key_expected && stop.after == Value) {
    return {fmt::format("after the comma a key was expected, not {}", shown(word)),
            "write decimals with a point: 92.5, not 92,5; numbers have no other comma",
            std::nullopt, stop.number.has_value()};
  }
  if (key_expected) {
    return {fmt::format("a key was expected here, not {}", shown(word)),
            "write each number after its key: \"bust_girth\": 92.5"};
  }
  return {fmt::format("{} is not a number as JSON writes it", shown(word)),
          "write 92.5: digits and a point, no plus sign, no zero in front, no unit behind"};
}

Reason why_not_sign(std::string_view word) {
  const auto cannot = [&](std::string_view what) { return fmt::format("{} cannot be here", what); };
  if (word[0] == '\'') return {cannot("a single quote"), "put texts in double quotes: \"...\""};
  if (word[0] == '`') return {cannot("a backtick"), "put texts in double quotes: \"...\""};
  if (word[0] == '(') return {cannot("a round bracket"), "put lists in square brackets: [74.0]"};
  if (word[0] == '\\') return {cannot("a backslash"), "quotes round a text have no backslash"};
  return {fmt::format("{} is where a key or a value should be", shown(word)),
          "look at the quotes, commas and brackets just before"};
}

bool is_comment(std::string_view text, std::size_t at) {
  const std::string_view two = text.substr(at, 2);
  return two == "//" || two == "/*" || two == "# " || two == "#\t";
}

bool is_number_like(std::string_view word) {
  const bool begins = is_digit(word[0]) || word[0] == '-' || word[0] == '+' || word[0] == '.';
  return begins && word != "..." && (word == "-" || word.find_first_of("0123456789") < word.size());
}

Reason why_not_value(std::string_view text, const Stop& stop) {
  const std::string_view word = word_at(text, stop.next);
  if (word[0] == '"') return why_not_text(text, stop.next);
  if (is_letter(word[0]) || (word.size() > 1 && word[0] == '-' && is_letter(word[1]))) {
    return why_not_word(word);
  }
  if (is_number_like(word)) return why_not_number(word, stop);
  return why_not_sign(word);
}

Reason why_not_begin(std::string_view text, const Stop& stop) {
  const std::string_view word = word_at(text, stop.next);
  if (word[0] == '"') return why_not_text(text, stop.next);
  return {
      fmt::format("the file begins with {}", shown(word)),
      "a client file is one object in braces, { ... }, with keys and texts in double quotes; is "
      "this the right file?"};
}

}  // namespace

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_space(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::string_view word_at(std::string_view text, std::size_t at) {
  const std::size_t found = text.find_first_of(" \t\r\n,:;{}[]()\"", at + 1);
  return text.substr(at, std::min(found, text.size()) - at);
}

Reason why_not_json(std::string_view text, const Stop& stop) {
  if (is_space(text)) {
    return {"the file is empty", "write a client file, or check the file's name"};
  }
  if (auto reason = why_not_separator(text, stop)) return *reason;
  if (stop.next >= text.size())
    return {"the file ends too early", "the end of the file is missing"};
  if (auto reason = why_not_character(text, stop.next)) return *reason;
  if (is_comment(text, stop.next)) return {"comments are not allowed", "take the comment away"};
  if (stop.after == Whole) return why_not_more(text, stop.next);
  const char first = text[stop.next];
  if (first == ']' || first == '}') return why_not_bracket(text, stop);
  if (stop.after == Nothing) return why_not_begin(text, stop);
  if (stop.after != Opening && !has_separator(text, stop)) return why_not_behind(text, stop);
  return why_not_value(text, stop);
}

}  // namespace blockwright
