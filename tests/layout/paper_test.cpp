#include "blockwright/base/error.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace blockwright;

namespace {

struct Known {
  const char* name;
  double width, height;
};

}  // namespace

TEST_CASE("the named papers have their standard sizes") {
  // ISO 216, and 8.5 x 11, 8.5 x 14 and 11 x 17 in (ANSI/ASME Y14.1); both from memory.
  const Known known[] = {{"a4", 210, 297},        {"a3", 297, 420},
                         {"a2", 420, 594},        {"a1", 594, 841},
                         {"a0", 841, 1189},       {"letter", 215.9, 279.4},
                         {"legal", 215.9, 355.6}, {"tabloid", 279.4, 431.8}};
  for (const Known& paper : each(known)) {
    const Paper found = paper_named(paper.name);
    CHECK(found.name == paper.name);
    CHECK(found.width.mm() == Approx(paper.width));
    CHECK(found.height.mm() == Approx(paper.height));
    CHECK(!found.is_roll());
  }
}

TEST_CASE("each ISO size has the area of two of the next, to the rounding of whole millimetres") {
  for (int n = 0; n < 4; ++n) {
    CAPTURE(n);
    const Paper large = paper_named("a" + std::to_string(n));
    const Paper small = paper_named("a" + std::to_string(n + 1));
    CHECK(large.width.mm() == Approx(small.height.mm()).margin(1.0));
    CHECK(large.height.mm() == Approx(2.0 * small.width.mm()).margin(1.0));
  }
}

TEST_CASE("rolls and own sizes are read in millimetres") {
  CHECK(paper_named("roll:914").is_roll());
  CHECK(paper_named("roll:914").width.mm() == 914.0);
  CHECK(paper_named("300x400.5").width.mm() == 300.0);
  CHECK(paper_named("300x400.5").height.mm() == 400.5);
}

TEST_CASE("anything else is a usage error that says what is possible") {
  for (const char* name : {"", "a5", "A4", "roll", "roll:", "roll:99", "roll:x", "roll:5001",
                           "99x200", "200x", "x200", "200x300x400", "200 x 300", "nanxnan",
                           "1e3x200", "-200x300", "200x+300", "0x1p9x200", "200,5x300"}) {
    INFO(name);
    try {
      paper_named(name);
      FAIL("read as a paper");
    } catch (const UsageError& error) {
      CHECK(error.problem().code == "paper.unknown");
      CHECK(error.problem().hint.plain().find("letter") != std::string::npos);
    }
  }
}

TEST_CASE("a paper's sides are 100 to 5000 mm", "[kSmallestSide][kLargestSide]") {
  CHECK(paper_named("100x5000").height.mm() == 5000.0);
  CHECK(paper_named("roll:100").is_roll());
  for (const char* name : {"99.9x200", "200x99.9", "5000.1x200", "200x5000.1", "roll:99.9"}) {
    INFO(name);
    CHECK_THROWS_AS(paper_named(name), UsageError);
  }
}
