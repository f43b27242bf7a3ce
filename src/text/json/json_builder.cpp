#include "json_builder.hpp"

#include "blockwright/text/refuse.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <utility>

namespace blockwright {
namespace {

constexpr const char* kKeepOne = "keep one, and take the other away";
constexpr std::size_t kDeepest = 16;
constexpr std::size_t kMostValues = 10'000;
// The parser's number of the error "number overflow".
constexpr int kNumberOverflow = 406;

// Passes the parser's events on to the builder.
class Events : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit Events(JsonBuilder& builder) : builder_(builder) {}

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
    builder_.key(std::move(value));
    return true;
  }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool parse_error(std::size_t /*position*/, const std::string& /*last_token*/,
                   const nlohmann::json::exception& error) override {
    if (error.id == kNumberOverflow) builder_.number_too_large();
    builder_.not_json();
  }

 private:
  bool number(double value) { return scalar({.kind = JsonKind::Number, .number = value}); }
  bool scalar(JsonValue value) {
    builder_.scalar(std::move(value));
    return true;
  }
  bool open(JsonKind kind) {
    builder_.open(kind);
    return true;
  }
  bool close() {
    builder_.close();
    return true;
  }

  JsonBuilder& builder_;
};

}  // namespace

// The parser ends at a NUL byte as at the end, and skips a byte order mark.
void JsonBuilder::build() {
  if (document_.text_.starts_with(kByteOrderMark)) not_json();
  Events events(*this);
  nlohmann::json::sax_parse(document_.text_, &events);
  if (cursor_.next_begin() < document_.text_.size()) not_json();
}

std::size_t JsonBuilder::add(JsonValue value) {
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

void JsonBuilder::scalar(JsonValue value) {
  const TokenCursor::Span span = cursor_.next();
  value.begin = span.begin;
  value.end = span.end;
  add(std::move(value));
}

void JsonBuilder::key(std::string key) {
  key_begin_ = cursor_.next_begin();
  refuse_second(key);
  cursor_.next();
  key_ = std::move(key);
}

void JsonBuilder::refuse_second(const std::string& key) const {
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

void JsonBuilder::open(JsonKind kind) {
  if (open_.size() >= kDeepest) {
    refuse(document_.code("size"), where_now(),
           fmt::format("brackets nest deeper than {}", kDeepest),
           fmt::format("{}; count the brackets", document_.kind().holds));
  }
  const std::size_t index = add({.kind = kind, .begin = cursor_.next().begin});
  open_.push_back(index);
}

void JsonBuilder::close() {
  document_.values_[open_.back()].end = cursor_.next().end;
  open_.pop_back();
}

// The path of what comes next: a member of which the key was read, or what it will stand in.
std::string JsonBuilder::path_now() const {
  std::string path = open_.empty() ? "" : document_.path_of(document_.values_[open_.back()]);
  if (!key_) return path;
  if (!path.empty()) path += '.';
  return path + shown(*key_);
}

std::string JsonBuilder::where_now() const {
  return document_.where_at(cursor_.next_begin(), path_now());
}

Stop::After JsonBuilder::after() const {
  const auto& values = document_.values_;
  if (values.empty()) return Stop::After::Nothing;
  if (open_.empty()) return Stop::After::Whole;
  if (key_) return Stop::After::Key;
  return open_.back() + 1 == values.size() ? Stop::After::Opening : Stop::After::Value;
}

Stop JsonBuilder::stop() const {
  const auto& values = document_.values_;
  Stop stop{.after = after(), .end = cursor_.end(), .next = cursor_.next_begin()};
  stop.in_list = !open_.empty() && values[open_.back()].kind == JsonKind::List;
  if (stop.after == Stop::After::Value && values.back().kind == JsonKind::Number &&
      values.back().end == stop.end) {
    stop.number = {values.back().begin, values.back().end};
  }
  return stop;
}

void JsonBuilder::not_json() {
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

void JsonBuilder::number_too_large() {
  const std::string where = where_now();
  const TokenCursor::Span span = cursor_.next();
  const std::string_view number =
      std::string_view(document_.text_).substr(span.begin, span.end - span.begin);
  refuse(document_.code("range"), where, fmt::format("{} is too large for a number", shown(number)),
         std::string(document_.kind().number));
}

}  // namespace blockwright
