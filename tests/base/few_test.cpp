// A short list in place. Against std::vector, which holds the same.
#include "blockwright/base/few.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <stdexcept>
#include <vector>

using namespace blockwright;

TEST_CASE("A few things are kept in their order") {
  Few<int, 3> few{4, 7};
  few.push_back(9);
  const std::vector<int> same{4, 7, 9};
  CHECK(std::equal(few.begin(), few.end(), same.begin(), same.end()));
  CHECK(few.size() == 3);
  CHECK(few.front() == 4);
  CHECK(few[1] == 7);
  CHECK(few.back() == 9);
}

TEST_CASE("Nothing is in the list before something is put in") {
  const Few<int, 3> few;
  CHECK(few.empty());
  CHECK(few.begin() == few.end());
}

TEST_CASE("One more than there is room for is refused, and the others stay") {
  Few<int, 2> few{1, 2};
  CHECK_THROWS_AS(few.push_back(3), std::out_of_range);
  CHECK(few.size() == 2);
  CHECK(few.back() == 2);
}
