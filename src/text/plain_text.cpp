#include "blockwright/text/plain_text.hpp"

#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

// What programs put in the place of a letter that they could not read.
constexpr char32_t kLostLetter = 0xFFFD;

void refuse_character(const JsonDocument& document, const JsonValue& value, char32_t code) {
  if (code == kLostLetter) {
    refuse(document.code("text"), document.where(value),
           fmt::format("{} is {}; U+FFFD stands for a letter that was lost",
                       document.name_of(value), document.as_written(value)),
           "write the letter again and save the file as UTF-8");
  }
  if (is_control(code)) {
    refuse(document.code("text"), document.where(value),
           fmt::format("{} holds the control character {}", document.name_of(value),
                       code_point_name(code)),
           "take it away; texts are printed on the pieces as they are");
  }
}

}  // namespace

std::string read_plain_text(const JsonDocument& document, const JsonValue& value,
                            std::size_t most) {
  expect(document, value, JsonKind::Text, "write a text in double quotes: \"...\"");
  const std::u32string codes = code_points(value.text);
  for (const char32_t code : codes) refuse_character(document, value, code);
  if (codes.size() <= most) return value.text;
  refuse(document.code("size"), document.where(value),
         fmt::format("{} has {} characters, over {}: {}", document.name_of(value), codes.size(),
                     most, document.as_written(value)),
         "shorten it");
}

std::string read_name(const JsonDocument& document, const JsonValue& value) {
  std::string name = read_plain_text(document, value);
  const std::u32string codes = code_points(name);
  if (!std::ranges::all_of(codes, is_blank)) return name;
  const bool odd = name.find_first_not_of(' ') != std::string::npos;
  refuse(document.code("text"), document.where(value),
         fmt::format("the name {} is empty{}", document.as_written(value),
                     odd ? fmt::format("; it holds {} alone, of which nothing is to be seen",
                                       code_point_name(codes[0]))
                         : ""),
         std::string(document.kind().name));
}

}  // namespace blockwright
