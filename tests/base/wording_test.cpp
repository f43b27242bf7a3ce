#include "blockwright/base/wording.hpp"

#include <catch2/catch.hpp>

using namespace blockwright;

TEST_CASE("a sentence keeps its lengths as lengths, and its texts in one piece") {
  const Wording wording =
      std::string("it is ") + Length::mm(12.5) + " wide, " + "and " + Length::cm(4.0) + " is usual";
  REQUIRE(wording.parts().size() == 5);
  CHECK(std::get<Length>(wording.parts()[1]) == Length::mm(12.5));
  CHECK(std::get<std::string>(wording.parts()[2]) == " wide, and ");
  CHECK(wording.plain() == "it is 12.5 mm wide, and 40 mm is usual");
}

TEST_CASE("a plain text is a sentence without lengths, and nothing is an empty one") {
  CHECK(Wording("do not cut").plain() == "do not cut");
  CHECK(Wording("").empty());
  CHECK((Wording("a") + "" + "b") == Wording("ab"));
  CHECK_FALSE(Wording(Length()).empty());
}
