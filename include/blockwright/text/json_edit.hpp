#pragma once

#include "blockwright/text/json_document.hpp"

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

/// A text in quotes, what is not printable escaped. Bytes that are not UTF-8 stay.
std::string json_quoted(std::string_view text);

/// A number as typed; quoted if it is not a JSON number ("1/2").
JsonPart json_amount(std::string_view typed);
JsonPart json_text(std::string_view text);

/// The value's text. `indent` is that of the line on which it begins.
std::string written(const JsonPart& part, const JsonStyle& style, const std::string& indent);

/// The same value with everything on one line.
JsonPart on_one_line(JsonPart part);

/// The text of a JSON file beside its values, to put more values in without moving the others. A
/// byte order mark is kept.
class JsonEdit {
 public:
  /// Throws InputError, see JsonDocument.
  JsonEdit(std::string_view text, const JsonFileKind& kind, std::string_view file);

  [[nodiscard]] const JsonDocument& document() const { return document_; }
  [[nodiscard]] const JsonStyle& style() const { return style_; }
  /// Whether the first member or element of an object or list has a line of its own.
  [[nodiscard]] bool has_lines(const JsonValue& container) const;

  /// The whole text with one more element in a list, before its index-th or at its end.
  [[nodiscard]] std::string with_element(const JsonValue& list, std::size_t index,
                                         const JsonPart& element) const;
  /// The whole text with one more member at the end of an object. Requires: it has members.
  [[nodiscard]] std::string with_member(const JsonValue& object, std::string_view key,
                                        const JsonPart& value) const;
  /// What with_member() puts in.
  [[nodiscard]] std::string member_text(const JsonValue& object, std::size_t members,
                                        std::string_view key, const JsonPart& value) const;
  /// The whole text with another value in the place of one, on one line.
  [[nodiscard]] std::string with_value(const JsonValue& old, const JsonPart& value) const;
  /// The whole text with other bytes in the place of [begin, end).
  [[nodiscard]] std::string with_bytes(std::size_t begin, std::size_t end,
                                       std::string_view bytes) const;
  /// The bytes [begin, end) of the text.
  [[nodiscard]] std::string_view bytes(std::size_t begin, std::size_t end) const;

 private:
  [[nodiscard]] std::string separator(const JsonValue& container, std::size_t children) const;
  [[nodiscard]] std::string in_empty_list(const JsonValue& list, const JsonPart& element) const;
  [[nodiscard]] std::string line_indent(std::size_t at) const;

  std::string mark_;
  std::string text_;
  JsonDocument document_;
  JsonStyle style_;
};

}  // namespace blockwright
