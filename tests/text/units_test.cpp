// Lengths in words. An inch is 25.4 mm (international inch, 1959); a tape in inches shows
// sixteenths.
#include "blockwright/text/units.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace blockwright;

TEST_CASE("beside centimetres a length of half a millimetre or more is in centimetres too") {
  const auto said = [](double beside) {
    return worded("14.7 and " + Wording(Length::mm(147)) + ", give or take " + Length::mm(beside),
                  Unit::Cm);
  };
  CHECK(said(7.4) == "14.7 and 14.7 cm, give or take 0.7 cm");
  CHECK(said(4.9) == "14.7 and 14.7 cm, give or take 0.49 cm");
  CHECK(said(0.4) == "14.7 and 14.7 cm, give or take 0.4 mm");  // 0.01 cm would hide a tenth of it
  CHECK(worded("take " + Wording(Length::mm(7.4)), Unit::Cm) == "take 7.4 mm");
}

TEST_CASE("a length in a sentence names its unit, and what no tape shows has decimals") {
  CHECK(length_text(Length::mm(365.0), Unit::Cm) == "36.5 cm");
  CHECK(length_text(Length::mm(40.0), Unit::Cm) == "4 cm");
  CHECK(length_text(Length::mm(7.0), Unit::Cm) == "7 mm");
  CHECK(length_text(Length::mm(32.5), Unit::Cm) == "3.25 cm");   // as it was given
  CHECK(length_text(Length::mm(32.537), Unit::Cm) == "3.3 cm");  // as it was drawn
  CHECK(length_text(Length::mm(0.05), Unit::Cm) == "0.05 mm");
  CHECK(length_text(Length::inches(14.375), Unit::Inch) == "14 3/8 in");
  CHECK(length_text(Length::inches(-0.5), Unit::Inch) == "-1/2 in");
  CHECK(length_text(Length::mm(0.4), Unit::Inch) == "0.016 in");
  CHECK(length_text(Length(), Unit::Inch) == "0 in");
}

TEST_CASE("what is no length, or too long to be meant, still has a short text") {
  for (const Unit unit : {Unit::Cm, Unit::Inch}) {
    CHECK(length_text(Length::mm(std::numeric_limits<double>::quiet_NaN()), unit) == "no number");
    for (const double wild : {1e300, -1e300, 1e20}) {
      CHECK(length_text(Length::mm(wild), unit).size() < 30);
    }
  }
}

TEST_CASE("what is rounded as it is printed adds up as printed") {
  for (const Unit unit : {Unit::Cm, Unit::Inch}) {
    for (int i = 0; i < 500; ++i) {
      const Length a = Length::mm(100.0 + 0.37 * i), b = Length::mm(49.7 + 0.11 * i);
      CAPTURE(i);
      const Length sum = as_printed(a, unit) + as_printed(b, unit);
      CHECK(number_text(as_printed(sum, unit), unit) == number_text(sum, unit));
      CHECK(number_text(as_printed(a, unit), unit) == number_text(a, unit));
    }
  }
  CHECK(change_text(Length::mm(-6.0), Unit::Cm) == "-0.6");
  CHECK(change_text(Length::inches(0.25), Unit::Inch) == "+1/4");
}

TEST_CASE("a sentence is worded in the person's unit, problems in message and hint") {
  const Problem problem{Severity::Warning, "a.b", "front.side", "it is " + Length::mm(254.0),
                        "use " + Length::mm(127.0)};
  const Problem inches = worded(problem, Unit::Inch);
  CHECK(to_text(inches) == "warning [a.b] front.side: it is 10 in (use 5 in)");
  CHECK(worded(problem.message, Unit::Cm) == "it is 25.4 cm");
  const Problem small{Severity::Warning, "a.b", "x", "it is " + Length::mm(8.0),
                      "at most " + Length::mm(12.0)};
  CHECK(to_text(worded(small, Unit::Cm)) == "warning [a.b] x: it is 0.8 cm (at most 1.2 cm)");
}

TEST_CASE("a name says front or back once") {
  CHECK(name_text("front.side") == "front side");
  CHECK(name_text("back.waist_outer") == "back waist outer");
  CHECK(name_text("front.front_neck_point") == "front neck point");
  CHECK(name_text("front.centre_front") == "centre front");
  CHECK(name_text("back.centre_back") == "centre back");
  CHECK(name_text("front_left.centre_front") == "left centre front");
  CHECK(name_text("front_side.side") == "front side side");
  CHECK(name_text("bust_girth") == "bust girth");
}
