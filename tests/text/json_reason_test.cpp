// What goes wrong where people type JSON by hand: each is told at its place, in its own words.
#include "blockwright/base/error.hpp"
#include "blockwright/text/json_values.hpp"
#include "json_text.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <array>

using namespace blockwright;

namespace {

/// "1:9 client.syntax a comma is missing"; nothing where all is well.
template <class Work>
std::string told(const Work& work) {
  try {
    work();
  } catch (const InputError& error) {
    const Problem& problem = error.problem();
    CHECK_FALSE(problem.hint.empty());
    const std::string where = problem.where.substr(std::string_view("a.json:").size());
    return where.substr(0, where.find(' ')) + " " + problem.code + " " + problem.message.plain();
  }
  return {};
}

struct Slip {
  const char* typed;
  const char* told;
};

// Words of our own; the columns are counted by hand.
const std::vector<Slip> kSlips = {
    {R"({"a": "x" "b": 2})", R"(1:11 client.syntax a comma is missing before "b")"},
    {R"({"a": "x" "b)", R"(1:11 client.syntax a comma is missing before "b)"},
    {"{\"a\": 1 // x\n}", "1:9 client.syntax comments are not allowed"},
    {"{\"a\": 1 /* x */}", "1:9 client.syntax comments are not allowed"},
    {"{\"a\": 1 # x\n}", "1:9 client.syntax comments are not allowed"},
    {"{\"a\": 1 #\tx\n}", "1:9 client.syntax comments are not allowed"},
    {R"({"a": })", "1:7 client.syntax a value is missing before }"},
    {R"({"a", 1})", "1:5 client.syntax a colon is missing after the key"},
    {R"({"a" 1})", "1:6 client.syntax a colon is missing before 1"},
    {R"({"a" = 1})", "1:6 client.syntax there is an equals sign in place of the colon"},
    {R"({"a":: 1})", "1:6 client.syntax a colon follows a colon"},
    {R"({"a":, "b": 1})", "1:6 client.syntax a value is missing before this comma"},
    {R"({"a": 1,, "b": 2})", "1:9 client.syntax a comma follows a comma"},
    {R"({"a": 1; "b": 2})", "1:8 client.syntax there is a semicolon in place of a comma"},
    {R"({, "a": 1})", "1:2 client.syntax there is a comma before the first value"},
    {R"({: 1})", "1:2 client.syntax a key is missing before this colon"},
    {R"({"a": 1: 2})", "1:8 client.syntax there is a colon after a value"},
    {R"([1: 2])", "1:3 client.syntax there is a colon in a list"},
    {R"([1, 2 3])", "1:7 client.syntax a comma is missing before 3"},
    {R"({"a": 1,})", "1:9 client.syntax there is a comma before }"},
    {R"({"a": [1})", "1:9 client.syntax } is where ] should close the open bracket"},
    {R"({"a": 1])", "1:8 client.syntax ] is where } should close the open bracket"},
    {R"({"a": 1)", "1:8 client.syntax the file ends too early"},
    {R"({"a": 1}, {)", "1:9 client.syntax there is a comma after the end of the client"},
    {R"({"a": 92,5})", "1:10 client.syntax after the comma a key was expected, not 5"},
    {R"({"a": 092})", "1:8 client.syntax the number 092 has a zero in front"},
    {R"({"a": +1})", "1:7 client.syntax +1 is not a number as JSON writes it"},
    {R"({"a": 36 1/2})", "1:10 client.syntax the fraction 36 1/2 is not in quotes"},
    {R"({"a": 2026-03-14})", "1:11 client.syntax the date 2026-03-14 is not in quotes"},
    {R"({"a": Anna})", "1:7 client.syntax Anna is not in quotes"},
    {R"({"a": NaN})", "1:7 client.syntax NaN is not a number"},
    {R"({"a": 'x'})", "1:7 client.syntax a single quote cannot be here"},
    {"{\"a\": 1,\n \"a\": 2}",
     "2:2 client.duplicate \"a\" is given twice; the first is in a.json:1"},
};

}  // namespace

TEST_CASE("A slip of the pen in JSON is told at its place, for what it is") {
  for (const Slip& slip : each(kSlips)) {
    INFO(slip.typed);
    CHECK(told([&] { (void)document_of(slip.typed); }) == slip.told);
  }
}

TEST_CASE("A value of the wrong kind is told as such, a word that is not known as another") {
  constexpr std::array<std::string_view, 2> kWords = {"left", "right"};
  const auto word = [&](const std::string& text) {
    return told([&] {
      const JsonDocument document = document_of(text);
      (void)read_word(document, document.root(), kWords);
    });
  };
  CHECK(word("\"right\"").empty());
  CHECK(word("3").starts_with("1:1 client.type "));
  CHECK(word("\"rigth\"").starts_with("1:1 client.value "));
}

TEST_CASE("Texts for paper are printable; a name is more than blanks") {
  const auto text = [](const std::string& json) {
    return told([&] {
      const JsonDocument document = document_of(json);
      (void)read_plain_text(document, document.root());
    });
  };
  CHECK(text("\"Łucja, שלום\"").empty());
  CHECK(text("\"a\\tb\"").ends_with(" holds the control character U+0009"));
  CHECK(text("\"a\\u202eb\"").starts_with("1:1 client.text "));
  CHECK(text("\"a\xEF\xBF\xBD\"").ends_with("U+FFFD stands for a letter that was lost"));
  const auto name = [](const std::string& json) {
    return told([&] {
      const JsonDocument document = document_of(json);
      (void)read_name(document, document.root());
    });
  };
  CHECK(name("\" x\"").empty());
  CHECK(name("\"  \"") == "1:1 client.text the name \"  \" is empty");
  CHECK(name("\"\u00a0\"").ends_with(" is empty; it holds only U+00A0, which cannot be seen"));
}
