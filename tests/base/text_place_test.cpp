#include "blockwright/base/text_place.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

TEST_CASE("A place in a text is told as line and column, in characters") {
  const std::string text = "{\n \"naïve\": x\n}";
  CHECK(line_and_column(text, 0) == "1:1");
  CHECK(line_and_column(text, 2) == "2:1");
  CHECK(line_and_column(text, text.find('x')) == "2:11");  // ï is two bytes, one character
  CHECK(line_and_column(text, text.size() - 1) == "3:1");
  CHECK(line_and_column(text, 1000) == "3:2");
  CHECK(line_and_column("", 0) == "1:1");
}
