#include "blockwright/base/measure.hpp"

#include <catch2/catch.hpp>

#include <concepts>
#include <functional>

using namespace blockwright;

TEST_CASE("a measure gives back what was read to the last digit, degrees too") {
  for (int tenths = 50; tenths <= 450; ++tenths) {
    INFO(tenths);
    CHECK(Measure::degrees(tenths / 10.0).number() == tenths / 10.0);
    CHECK(Measure(Length::mm(tenths / 10.0)).length() == Length::mm(tenths / 10.0));
  }
  CHECK(Measure::degrees(25.5).angle() == Angle::degrees(25.5));
}

TEST_CASE("measures of one kind are added, divided and compared") {
  const Measure tape = Length::mm(745.0), ease = Length::mm(25.0);
  CHECK(tape + ease == Length::mm(770.0));
  CHECK(abs(ease - tape) == Length::mm(720.0));
  CHECK((tape + ease) / 2.0 == Length::mm(385.0));
  CHECK(tape / ease == 29.8);
  CHECK(ease < tape);
  CHECK(Measure::degrees(5.0) < 2.0 * Measure::degrees(3.0));
}

TEST_CASE("a length and an angle are never mixed") {
  const Measure length = Length::mm(20.0), angle = Measure::degrees(20.0);
  CHECK(length != angle);
  CHECK_THROWS_AS(length + angle, std::logic_error);
  CHECK_THROWS_AS(length < angle, std::logic_error);
  CHECK_THROWS_AS(length.angle(), std::logic_error);
  CHECK_THROWS_AS(angle.length(), std::logic_error);
  STATIC_REQUIRE_FALSE(std::convertible_to<Measure, Length>);
  STATIC_REQUIRE_FALSE(std::convertible_to<Measure, double>);
  STATIC_REQUIRE_FALSE(std::invocable<std::plus<>, Length, Angle>);
}
