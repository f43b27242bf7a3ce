#include "json_reason.hpp"

#include "client_problem.hpp"
#include "utf8.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace blockwright {
namespace {

constexpr std::string_view kSpace = " \t\r\n";

// The last character before `at` that is not space; 0 at the start.
char before(std::string_view text, std::size_t at) {
  const std::size_t found = text.substr(0, at).find_last_not_of(kSpace);
  return found == std::string_view::npos ? '\0' : text[found];
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

std::string_view word_at(std::string_view text, std::size_t at) {
  const auto* const end = std::find_if(text.begin() + at, text.end(), [](char c) {
    return !is_letter(c) && !is_digit(c) && c != '-' && c != '+' && c != '.';
  });
  return text.substr(at,
                     std::max<std::size_t>(1, static_cast<std::size_t>(end - text.begin()) - at));
}

Reason not_utf8() {
  return {"the file holds bytes that are not UTF-8", "save the file again as UTF-8"};
}

// What is wrong inside the text in quotes that begins at `at`.
Reason why_not_text(std::string_view text, std::size_t at) {
  for (std::size_t i = at + 1; i < text.size() && text[i] != '"';) {
    const Utf8Character character = utf8_at(text, i);
    if (character.code == kNotUtf8) {
      return not_utf8();
    }
    if (character.code < 0x20) break;
    if (character.code == '\\' && i + 1 < text.size() &&
        std::string_view("\"\\/bfnrtu").find(text[i + 1]) == std::string_view::npos) {
      return {"a backslash in a text must be followed by one of \" \\ / b f n r t u",
              "write \\\\ where the text shall hold a backslash"};
    }
    i += character.code == '\\' ? 2 : character.size;
  }
  return {"the text that begins here is not closed on its line, or an escape in it is broken",
          "end it with a double quote"};
}

Reason why_not_word(std::string_view word) {
  const bool number_word = word == "NaN" || word == "nan" || word == "Infinity" ||
                           word == "-Infinity" || word == "-NaN" || word == "inf" || word == "-inf";
  if (number_word) {
    return {fmt::format("{} is not a number", shown(word)),
            "leave the key out if the measurement was not taken"};
  }
  return {fmt::format("{} stands without quotes", shown(word)),
          "keys and texts stand in double quotes: \"bust_girth\""};
}

Reason why_not_number(std::string_view word, char previous) {
  if (previous == ',') {
    return {fmt::format("after the comma a key was expected, not {}", shown(word)),
            "write decimals with a point: 92.5, not 92,5"};
  }
  return {fmt::format("{} is not a number as JSON writes it", shown(word)),
          "write 92.5: digits and a point, no plus sign, no zero in front, no unit behind"};
}

// What follows a number at once: a unit, an inch mark, a second digit after a zero, a fraction.
Reason why_not_behind_number(char first) {
  if (first == '/') {
    return {"a fraction stands without quotes", "write inch fractions as texts: \"36 1/2\""};
  }
  return {"a number has a zero in front or something behind it",
          "write the bare number: 92.5; inch fractions as texts: \"36 1/2\""};
}

bool expects_value(char previous) {
  return previous == ',' || previous == ':' || previous == '[' || previous == '{' ||
         previous == '\0';
}

Reason why_not_bracket(char bracket, char previous) {
  if (previous == ',') {
    return {fmt::format("a comma stands before {}", bracket), "take away the last comma"};
  }
  return {fmt::format("{} closes nothing here, or a value is missing before it", bracket),
          "look for a bracket of the other kind, or a key without a value"};
}

Reason why_not_sign(char sign) {
  if (sign == '\'') return {"a single quote stands here", "texts stand in double quotes: \"...\""};
  if (sign == '/' || sign == '#') return {"comments are not allowed", "take the comment away"};
  return {"the file is not JSON here", "look at the quotes, commas and brackets just before"};
}

}  // namespace

Reason why_not_json(std::string_view text, std::size_t at, bool complete) {
  if (text.find_first_not_of(kSpace) == std::string_view::npos) {
    return {"the file is empty", "write a client file, or check the file's name"};
  }
  if (at >= text.size()) return {"the file ends too early", "the end of the file is missing"};
  if (complete) {
    return {"more text follows after the end of the client", "one file holds one client"};
  }
  const char first = text[at];
  const char previous = before(text, at);
  if (first == ']' || first == '}') return why_not_bracket(first, previous);
  if (at > 0 && is_digit(text[at - 1])) return why_not_behind_number(first);
  if (is_digit(first) && is_digit(previous)) return why_not_behind_number('/');
  if (!expects_value(previous)) {
    return {"a comma or a colon is missing before this",
            "members stand as \"key\": value, with commas between them"};
  }
  if (first == '"') return why_not_text(text, at);
  const std::string_view word = word_at(text, at);
  if (is_letter(first) || (first == '-' && word.size() > 1 && is_letter(word[1]))) {
    return why_not_word(word);
  }
  if (utf8_at(text, at).code == kNotUtf8) return not_utf8();
  if (is_digit(first) || first == '-' || first == '+' || first == '.') {
    return why_not_number(word, previous);
  }
  return why_not_sign(first);
}

}  // namespace blockwright
