// What is guessed of a value that no body has: only what is plausible, of that person where her
// bust is known, and as one would write it in her unit.
#include "slips.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

using enum MeasurementName;

std::string hint(MeasurementName name, const std::string& typed, double number, Unit unit,
                 std::optional<double> bust_mm = {}) {
  return range_hint(info(name), {typed, number, unit},
                    bust_mm ? std::optional<Measure>(Length::mm(*bust_mm)) : std::nullopt);
}

TEST_CASE("a guess is written as she writes: no 35.56, and inches as on the tape") {
  CHECK(hint(NeckBaseGirth, "14", 14.0, Unit::Cm, 920.0) ==
        "did you mean 35.6 cm (inches were written; the unit here is cm)?");
  CHECK(hint(BustGirth, "92.5", 92.5, Unit::Inch) ==
        "did you mean 36 7/16 in (cm were written; the unit here is inches)?");
}

TEST_CASE("what is not plausible of her is not guessed") {
  // 26 inches are 66 cm: a waist, but not one of a bust of 140 cm (the survey's regression).
  CHECK(hint(WaistGirth, "26", 26.0, Unit::Cm, 860.0).find("did you mean 66 cm") == 0);
  CHECK(hint(WaistGirth, "26", 26.0, Unit::Cm, 1400.0).find("66 cm") == std::string::npos);
  // Half of an upper arm of 60 cm, of a small woman.
  CHECK(hint(UpperArmGirth, "5", 5.0, Unit::Cm, 800.0).find("did you mean") == std::string::npos);
}

TEST_CASE("two guesses that are about as likely are both told") {
  // 28.5: inches of a waist of 72.4, or 82.5 with two digits swapped.
  CHECK(hint(WaistGirth, "28.5", 28.5, Unit::Cm, 950.0).find("? Or ") != std::string::npos);
}

TEST_CASE("a value just outside its limits may be right: only her bust can say that it is not") {
  CHECK(hint(HipGirth, "59", 59.0, Unit::Cm, 907.0)
            .starts_with("did you mean 95 cm (two digits swapped)?"));
  CHECK(hint(HipGirth, "59", 59.0, Unit::Cm).starts_with("take it again"));
  CHECK(hint(BustGirth, "59.9", 59.9, Unit::Cm).starts_with("take it again"));
  CHECK(hint(ShoulderSlope, "46", 46.0, Unit::Cm, 920.0).starts_with("take it again"));
}

}  // namespace
}  // namespace blockwright
