#include "blockwright/text/json_document.hpp"
#include "blockwright/text/refuse.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

constexpr const char* kKeepOne = "keep one, and take the other away";
constexpr std::size_t kDeepest = 16;
constexpr std::size_t kMostValues = 10'000;
// The parser's number of the error "number overflow".
constexpr int kNumberOverflow = 406;

constexpr std::size_t kMostBytes = 1U << 20U;

// As much of the stream as shows whether it is too long.
std::string read_some(std::istream& in) {
  std::string text;
  std::array<char, 4096> block{};
  while (text.size() <= kMostBytes) {
    in.read(block.data(), block.size());
    if (in.gcount() == 0) break;
    text.append(block.data(), static_cast<std::size_t>(in.gcount()));
  }
  return text;
}

std::string read_text(std::istream& in, const std::string& file, const JsonDocument& document) {
  std::string text = read_some(in);
  if (text.size() > kMostBytes) {
    refuse(document.code("size"), file, "the file is larger than 1 MiB",
           fmt::format("{} and is a few KiB; is this the right file?", document.kind().holds));
  }
  if (text.starts_with(kByteOrderMark)) text.erase(0, kByteOrderMark.size());
  return text;
}

}  // namespace

// Fills a document with what the parser reports of its text. The parser does not say where: a token
// ends where it has read to, and begins behind the separators that follow the one before.
class JsonBuilder : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit JsonBuilder(JsonDocument& document) : document_(document), in_(document.text_) {}

  // Throws InputError, see JsonDocument. The parser ends at a NUL byte as at the end, and skips a
  // byte order mark.
  void build() {
    if (document_.text_.starts_with(kByteOrderMark)) not_json();
    nlohmann::json::sax_parse(in_, this);
    if (next_begin() < document_.text_.size()) not_json();
  }

  bool null() override { return scalar({.kind = JsonKind::Null}); }
  bool boolean(bool value) override { return scalar({.kind = JsonKind::Boolean, .flag = value}); }
  bool number_integer(number_integer_t value) override {
    return number(static_cast<double>(value));
  }
  bool number_unsigned(number_unsigned_t value) override {
    return number(static_cast<double>(value));
  }
  bool number_float(number_float_t value, const string_t& /*source*/) override {
    return number(value);
  }
  bool string(string_t& value) override {
    return scalar({.kind = JsonKind::Text, .text = std::move(value)});
  }
  bool binary(binary_t& /*value*/) override { return false; }  // JSON text has none
  bool start_object(std::size_t /*size*/) override { return open(JsonKind::Object); }
  bool start_array(std::size_t /*size*/) override { return open(JsonKind::List); }
  bool key(string_t& value) override {
    key_begin_ = next_begin();
    refuse_second(value);
    end_ = token_end(JsonKind::Text);
    key_ = std::move(value);
    return true;
  }

  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool parse_error(std::size_t /*position*/, const std::string& /*last_token*/,
                   const nlohmann::json::exception& error) override {
    if (error.id != kNumberOverflow) not_json();
    const std::size_t begin = next_begin();
    const std::string number = document_.text_.substr(begin, token_end(JsonKind::Number) - begin);
    refuse(document_.code("range"), where_now(),
           fmt::format("{} is too large for a number", shown(number)),
           std::string(document_.kind().number));
  }

 private:
  bool number(double value) { return scalar({.kind = JsonKind::Number, .number = value}); }

  [[nodiscard]] std::size_t next_begin() const {
    return std::min(document_.text_.find_first_not_of(" \t\r\n,:", end_), document_.text_.size());
  }

  // To see where a number ends, the parser reads one character more.
  [[nodiscard]] std::size_t token_end(JsonKind kind) const {
    const std::streamoff read = in_.rdbuf()->pubseekoff(0, std::ios::cur, std::ios::in);
    const bool one_more = kind == JsonKind::Number && !in_.eof();
    return static_cast<std::size_t>(read) - (one_more ? 1 : 0);
  }

  std::size_t add(JsonValue value) {
    auto& values = document_.values_;
    const std::size_t index = values.size();
    if (index >= kMostValues) {
      refuse(document_.code("size"), where_now(),
             fmt::format("the file holds over {} values", kMostValues),
             fmt::format("{}; is this the right file?", document_.kind().holds));
    }
    value.key = std::exchange(key_, {}).value_or("");
    value.key_begin = key_begin_;
    if (!open_.empty()) {
      value.parent = open_.back();
      values[open_.back()].children.push_back(index);
    }
    values.push_back(std::move(value));
    return index;
  }

  bool scalar(JsonValue value) {
    value.begin = next_begin();
    value.end = end_ = token_end(value.kind);
    add(std::move(value));
    return true;
  }

  void refuse_second(const std::string& key) const {
    const JsonValue& object = document_.values_[open_.back()];
    const JsonValue* first = document_.member(object, key);
    if (first == nullptr) return;
    const std::string path = document_.path_of(*first);
    // "client.duplicate", "job.duplicate", "style.duplicate"
    const auto hint_of = document_.kind().second_key_hint;
    const std::string hint = hint_of == nullptr ? "" : hint_of(object.key, key);
    refuse(document_.code("duplicate"), document_.where_at(key_begin_, path),
           fmt::format("\"{}\" is given twice; the first is in {}", shown(key),
                       document_.line_of(*first)),
           hint.empty() ? kKeepOne : hint);
  }

  bool open(JsonKind kind) {
    if (open_.size() >= kDeepest) {
      refuse(document_.code("size"), where_now(),
             fmt::format("brackets nest deeper than {}", kDeepest),
             fmt::format("{}; count the brackets", document_.kind().holds));
    }
    const std::size_t begin = next_begin();
    end_ = token_end(kind);
    open_.push_back(add({.kind = kind, .begin = begin}));
    return true;
  }

  bool close() {
    document_.values_[open_.back()].end = end_ = token_end(JsonKind::List);
    open_.pop_back();
    return true;
  }

  // The path of what comes next: a member of which the key was read, or what it will stand in.
  [[nodiscard]] std::string path_now() const {
    std::string path = open_.empty() ? "" : document_.path_of(document_.values_[open_.back()]);
    if (!key_) return path;
    if (!path.empty()) path += '.';
    return path + shown(*key_);
  }

  [[nodiscard]] std::string where_now() const {
    return document_.where_at(next_begin(), path_now());
  }

  [[nodiscard]] Stop::After after() const {
    const auto& values = document_.values_;
    if (values.empty()) return Stop::After::Nothing;
    if (open_.empty()) return Stop::After::Whole;
    if (key_) return Stop::After::Key;
    return open_.back() + 1 == values.size() ? Stop::After::Opening : Stop::After::Value;
  }

  [[nodiscard]] Stop stop() const {
    const auto& values = document_.values_;
    Stop stop{.after = after(), .end = end_, .next = next_begin()};
    stop.in_list = !open_.empty() && values[open_.back()].kind == JsonKind::List;
    if (stop.after == Stop::After::Value && values.back().kind == JsonKind::Number &&
        values.back().end == stop.end) {
      stop.number = values.back().begin;
    }
    return stop;
  }

  [[noreturn]] void not_json() const {
    const Stop stopped = stop();
    Reason reason = why_not_json(document_.text_, stopped);
    if (stopped.next == document_.text_.size() && !open_.empty() && !reason.at) {
      const JsonValue& unclosed = document_.values_[open_.back()];
      reason.hint = fmt::format("close the bracket that opens in {}", document_.where(unclosed));
    }
    const std::string path =
        reason.of_last_value ? document_.path_of(document_.values_.back()) : path_now();
    refuse(document_.code("syntax"), document_.where_at(reason.at.value_or(stopped.next), path),
           std::move(reason.message), std::move(reason.hint));
  }

  JsonDocument& document_;
  std::istringstream in_;
  std::size_t end_ = 0;             // of the last token taken
  std::vector<std::size_t> open_;   // lists and objects not closed yet, outermost first
  std::optional<std::string> key_;  // of which the value is still to come
  std::size_t key_begin_ = 0;
};

JsonDocument JsonDocument::read(std::istream& in, std::string_view file, const JsonFileKind& kind) {
  JsonDocument document;
  document.kind_ = &kind;
  document.file_ = file;
  document.text_ = read_text(in, document.file_, document);
  JsonBuilder(document).build();
  return document;
}

}  // namespace blockwright
