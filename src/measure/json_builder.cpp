#include "json_builder.hpp"

#include "client_problem.hpp"
#include "json_reason.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <utility>

namespace blockwright {
namespace {

constexpr std::size_t kDeepest = 16;
constexpr std::size_t kMostValues = 10'000;
// The parser's number of the error "number overflow".
constexpr int kNumberOverflow = 406;

// Passes the parser's events on to the builder.
class Events : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit Events(JsonBuilder& builder) : builder_(builder) {}

  bool null() override { return scalar({.kind = JsonKind::Null}); }
  bool boolean(bool /*value*/) override { return scalar({.kind = JsonKind::Boolean}); }
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

void JsonBuilder::build() {
  Events events(*this);
  nlohmann::json::sax_parse(document_.text_, &events);
}

std::size_t JsonBuilder::add(JsonValue value) {
  auto& values = document_.values_;
  const std::size_t index = values.size();
  if (index >= kMostValues) {
    refuse("client.size", where_now(), fmt::format("the file holds over {} values", kMostValues),
           "a client file holds one person; is this the right file?");
  }
  value.key = std::exchange(key_, {});
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
  refuse("client.duplicate", document_.where_at(key_begin_, path),
         fmt::format("\"{}\" is given twice; the first is in {}", shown(key),
                     document_.line_of(*first)),
         "keep one; readings taken several times go into a list: [74.0, 74.5]");
}

void JsonBuilder::open(JsonKind kind) {
  if (open_.size() >= kDeepest) {
    refuse("client.size", where_now(), fmt::format("brackets nest deeper than {}", kDeepest),
           "a client file nests no deeper than sessions, tape and readings; count the brackets");
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
  if (key_.empty()) return path;
  if (!path.empty()) path += '.';
  return path + shown(key_);
}

std::string JsonBuilder::where_now() const {
  return document_.where_at(cursor_.next_begin(), path_now());
}

void JsonBuilder::not_json() {
  const std::size_t at = cursor_.next_begin();
  Reason reason = why_not_json(document_.text_, at, !document_.values_.empty() && open_.empty());
  if (at == document_.text_.size() && !open_.empty()) {
    const JsonValue& unclosed = document_.values_[open_.back()];
    reason.hint = fmt::format("close the bracket that opens in {}", document_.where(unclosed));
  }
  refuse("client.syntax", where_now(), std::move(reason.message), std::move(reason.hint));
}

void JsonBuilder::number_too_large() {
  const std::string where = where_now();
  const TokenCursor::Span span = cursor_.next();
  const std::string_view number =
      std::string_view(document_.text_).substr(span.begin, span.end - span.begin);
  refuse("client.range", where, fmt::format("{} is too large for a number", shown(number)),
         "write the measurement as the tape shows it: 92.5");
}

}  // namespace blockwright
