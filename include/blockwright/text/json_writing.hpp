#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace blockwright {

/// How a JSON file is written: what stands at the ends of its lines, how far it indents, what
/// stands behind a key and behind a value of one line.
struct JsonStyle {
  bool lines = true;  ///< whether the members of the file's object have lines of their own
  std::string newline = "\n";
  std::string step = "  ";
  std::string colon = ": ";
  std::string comma = ", ";
};

/// A value to be written: as it stands, or an object or a list of values, on one line or with a
/// line for each.
struct JsonPart {
  enum class Kind { Scalar, Object, List };

  Kind kind = Kind::Scalar;
  std::string scalar{};  ///< as written: a number, or a text in its quotes
  std::vector<std::pair<std::string, JsonPart>> members{};  ///< the keys of a list's are empty
  bool lines = false;
};

/// A text in quotes. Bytes that are not UTF-8 stay.
std::string json_quoted(std::string_view text);

/// A number as typed; quoted if it is not a JSON number ("1/2").
JsonPart json_amount(std::string_view typed);
JsonPart json_text(std::string_view text);

/// The value's text. `indent` is that of the line on which it begins.
std::string written(const JsonPart& part, const JsonStyle& style, const std::string& indent);

/// The same value with everything on one line.
JsonPart on_one_line(JsonPart part);

}  // namespace blockwright
