// The line at the foot of a terminal while a batch runs.
#include "../../src/cli/progress_bar.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace blockwright;

TEST_CASE("The progress line says the share, how many are done and how many failed") {
  CHECK(progress_text(0, 40, 0) == "[--------------------]   0 %  0 of 40");
  CHECK(progress_text(10, 40, 2) == "[#####---------------]  25 %  10 of 40, 2 failed");
  CHECK(progress_text(40, 40, 0) == "[####################] 100 %  40 of 40");
  CHECK(progress_text(0, 0, 0) == "[####################] 100 %  0 of 0");
}

TEST_CASE("Off a terminal nothing is drawn; on one the line is taken away at the end") {
  std::ostringstream hidden, shown;
  {
    ProgressBar off(hidden, false), on(shown, true);
    off.draw(1, 2, 0);
    on.draw(1, 2, 0);
  }
  CHECK(hidden.str().empty());
  CHECK(shown.str().ends_with("\r\033[K"));
}
