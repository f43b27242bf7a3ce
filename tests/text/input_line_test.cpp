// Lines of standard input, of which none fills the memory.
#include "blockwright/text/input_line.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace blockwright;

TEST_CASE("A line is read up to its end, or up to what is asked for, and goes on from there") {
  std::istringstream in("four\n\nfiveX\nlast");
  const auto read = [&](std::size_t most) { return *next_line(in, most); };
  InputLine line = read(4);
  CHECK(line.text == "four");
  CHECK(line.is_whole);
  line = read(4);
  CHECK(line.text.empty());
  CHECK(line.is_whole);
  line = read(4);
  CHECK(line.text == "five");
  CHECK_FALSE(line.is_whole);
  line = read(4);
  CHECK(line.text == "X");
  CHECK(line.is_whole);
  line = read(4);
  CHECK(line.text == "last");
  CHECK(line.is_whole);
  CHECK_FALSE(next_line(in, 4).has_value());
}
