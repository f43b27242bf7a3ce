// JSON files whose values know their places.

#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/text/json_edit.hpp"
#include "blockwright/text/json_values.hpp"
#include "json_text.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

namespace {

std::string place_of_fault(const std::string& text) {
  try {
    (void)document_of(text);
  } catch (const InputError& error) {
    return error.problem().where;
  }
  return {};
}

}  // namespace

TEST_CASE("A place in a JSON file is told as line and column, in characters") {
  CHECK(place_of_fault("{\n \"naïve\": x\n}") == "a.json:2:11 naïve");  // ï is two bytes
  CHECK(place_of_fault("{\n \"naïve\": 1\n") == "a.json:3:1");
  CHECK(place_of_fault("") == "a.json:1:1");
}

TEST_CASE("Values know where they stand, numbers to their last digit") {
  const JsonDocument document = document_of("{\"a\": [1, -2.5e1 ,30],\n\"b\" :\"ï\"}");
  const JsonValue& list = document.child(document.root(), 0);
  CHECK(document.as_written(list) == "[1, -2.5e1 ,30]");
  CHECK(document.as_written(document.child(list, 0)) == "1");
  CHECK(document.as_written(document.child(list, 1)) == "-2.5e1");
  CHECK(document.as_written(document.child(list, 2)) == "30");
  CHECK(document.where(document.child(list, 2)) == "a.json:1:19 a[2]");
  CHECK(document.as_written(document.child(document.root(), 1)) == "\"ï\"");
  CHECK(document.where_key(document.child(document.root(), 1)) == "a.json:2:1 b");
  CHECK(document_of("92").root().end == 2);
}

namespace {

bool is_read(const std::string& text) { return place_of_fault(text).empty(); }

std::string nested(std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); }

std::string list_of(std::size_t count) {
  std::string text = "[1";
  for (std::size_t i = 1; i < count; ++i) text += ",1";
  return text + "]";
}

std::string padded(std::size_t bytes) { return "[" + std::string(bytes - 2, ' ') + "]"; }

}  // namespace

// Ours: far beyond what anybody types.
TEST_CASE("The limits of a JSON file from both sides: depth, values, bytes",
          "[kDeepest][kMostValues][kMostBytes]") {
  CHECK(is_read(nested(16)));
  CHECK_FALSE(is_read(nested(17)));
  CHECK(is_read(list_of(9'999)));
  CHECK_FALSE(is_read(list_of(10'000)));
  CHECK(is_read(padded(1024 * 1024)));
  CHECK_FALSE(is_read(padded(1024 * 1024 + 1)));
}

TEST_CASE("A whole number has no part over, and is no larger than the program counts") {
  const auto read = [](const std::string& text) {
    const JsonDocument document = document_of(text);
    int number = 0;
    read_value(document, document.root(), number);
    return number;
  };
  CHECK(read("12") == 12);
  CHECK(read("-12.0") == -12);
  CHECK(read("2147483647") == 2147483647);
  for (const char* text : {"12.5", "2147483648", "-3e9", "1e300"}) {
    INFO(text);
    CHECK_THROWS_AS(read(text), InputError);
  }
}

TEST_CASE("A text put into a JSON file is printable and reads back as it was") {
  const std::string text = "a\"b\\c\n\x1b\x7f\u0085\u009b\u2028\u202e\u2069\uffff ë שלום 🧵";
  const std::string quoted = json_quoted(text);
  CHECK(quoted == printable(quoted));
  CHECK(document_of(quoted).root().text == text);
  CHECK(json_quoted("a\xff") == "\"a\xff\"");  // for the reader to refuse
}
