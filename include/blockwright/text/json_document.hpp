#pragma once

#include <iosfwd>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

inline constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

enum class JsonKind { Null, Boolean, Number, Text, List, Object };

/// One value of a JSON file, with its place: the bytes [begin, end) of the file's text.
struct JsonValue {
  JsonKind kind = JsonKind::Null;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string key{};          ///< of a member of an object
  std::size_t key_begin = 0;  ///< where that key stands
  std::string text{};         ///< of a Text
  double number = 0.0;        ///< of a Number
  bool flag = false;          ///< of a Boolean
  std::size_t parent = 0;     ///< the root is its own parent
  std::vector<std::size_t> children{};
};

/// One kind of JSON file that people write, and what is said of it.
struct JsonFileKind {
  std::string_view codes;   ///< what its problem codes begin with: "client"
  std::string_view format;  ///< what its "format" says: "blockwright-client-1"
  std::string_view holds;   ///< what such a file holds: "a client file holds one person"
  std::string_view number;  ///< how to write a number: "write the measurement as the tape shows it"
  std::string_view name;    ///< how to write a name: "write the person's name"
  /// What to do with a file of another format. Empty, or null: write the right one.
  std::string (*other_format_hint)(std::string_view format) = nullptr;
  /// Where a key belongs that is not `known` here; empty if nowhere. Null: nothing to say.
  std::string (*right_place)(std::string_view key,
                             std::span<const std::string_view> known) = nullptr;
  /// What to do about a key given twice in an object of that key. Null: keep one.
  std::string (*second_key_hint)(std::string_view object, std::string_view key) = nullptr;
};

/// A JSON file whose values know their places, so that a message can point at them. Reading
/// refuses (InputError; codes here as of a client file) what is not JSON, NUL bytes included
/// ("client.syntax"), a key given twice in one object ("client.duplicate"), a number too large for
/// a double ("client.range"), and files over 1 MiB, nested deeper than 16 or of more than 10,000
/// values ("client.size"). Reading never recurses.
class JsonDocument {
 public:
  /// `file` names the file in messages. A UTF-8 byte order mark is skipped.
  static JsonDocument read(std::istream& in, std::string_view file, const JsonFileKind& kind);

  [[nodiscard]] const JsonFileKind& kind() const { return *kind_; }
  /// "client.type" for "type"
  [[nodiscard]] std::string code(std::string_view what) const;

  [[nodiscard]] const JsonValue& root() const { return values_.front(); }
  [[nodiscard]] const JsonValue& child(const JsonValue& value, std::size_t index) const {
    return values_[value.children[index]];
  }
  /// What the value stands in. Requires: it is not the root.
  [[nodiscard]] const JsonValue& parent(const JsonValue& value) const {
    return values_[value.parent];
  }
  /// The member of that key; nullptr if there is none.
  [[nodiscard]] const JsonValue* member(const JsonValue& object, std::string_view key) const;

  /// "client.json:7:42 sessions[0].tape.bust_girth"
  [[nodiscard]] std::string where(const JsonValue& value) const;
  /// The same, pointing at the value's key.
  [[nodiscard]] std::string where_key(const JsonValue& value) const;
  /// "client.json:7"
  [[nodiscard]] std::string line_of(const JsonValue& value) const;
  /// The value as the file has it, cut to what a message can show.
  [[nodiscard]] std::string as_written(const JsonValue& value) const;
  /// "the text "36 1/2"", "the number 5", "null", "a list"
  [[nodiscard]] std::string described(const JsonValue& value) const;
  /// "bust_girth", or "sessions[0]" for an element of a list.
  [[nodiscard]] std::string name_of(const JsonValue& value) const;

 private:
  friend class JsonBuilder;
  [[nodiscard]] std::string index_of(const JsonValue& element) const;
  [[nodiscard]] std::string path_of(const JsonValue& value) const;
  [[nodiscard]] std::string where_at(std::size_t at, const std::string& path) const;

  const JsonFileKind* kind_ = nullptr;
  std::string file_;
  std::string text_;
  std::vector<JsonValue> values_;
};

/// "a number", "a text", "a list" ...
std::string_view kind_name(JsonKind kind);

/// Refuses ("<kind>.type") a value that is not of this kind.
void expect(const JsonDocument& document, const JsonValue& value, JsonKind kind, std::string hint);

}  // namespace blockwright
