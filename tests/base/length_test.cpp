#include "blockwright/base/length.hpp"

#include "blockwright/base/angle.hpp"

#include <catch2/catch.hpp>

#include <numbers>

using blockwright::Angle;
using blockwright::Length;

TEST_CASE("an inch is 25.4 mm and a centimetre 10 mm, exactly") {
  // International yard and pound agreement, 1959.
  STATIC_REQUIRE(Length::inches(1.0).mm() == 25.4);
  STATIC_REQUIRE(Length::inches(36.0).mm() == 914.4);
  STATIC_REQUIRE(Length::cm(12.5).mm() == 125.0);
  STATIC_REQUIRE(Length::mm(127.0).inches() == 5.0);
  STATIC_REQUIRE(Length::mm(127.0).cm() == 12.7);
}

TEST_CASE("a length that nobody set is nothing") { STATIC_REQUIRE(Length{} == Length::mm(0.0)); }

TEST_CASE("lengths add, subtract, scale and divide as on a tape") {
  const Length bust = Length::cm(92.5);
  const Length ease = Length::mm(50.0);
  CHECK((bust + ease).mm() == 975.0);
  CHECK((bust - ease).mm() == 875.0);
  CHECK((bust / 4.0).mm() == 231.25);
  CHECK((0.5 * bust).mm() == 462.5);
  CHECK((bust * 0.5).mm() == 462.5);
  CHECK((-ease).mm() == -50.0);
  CHECK(bust / ease == 18.5);
  Length sum = bust;
  sum += ease;
  CHECK(sum == Length::mm(975.0));
}

TEST_CASE("lengths are ordered whatever unit they came in") {
  CHECK(Length::inches(1.0) > Length::cm(2.5));
  CHECK(Length::cm(2.54) == Length::inches(1.0));
  CHECK(Length::mm(9.0) < Length::cm(1.0));
}

TEST_CASE("half a turn is pi") {
  STATIC_REQUIRE(Angle::degrees(180.0).radians() == std::numbers::pi);
  STATIC_REQUIRE(Angle::radians(std::numbers::pi).degrees() == 180.0);
  STATIC_REQUIRE(Angle{} == Angle::degrees(0.0));
}

TEST_CASE("angles add, subtract, scale and compare") {
  const Angle dart = Angle::radians(0.5);
  CHECK((dart + Angle::radians(0.25)).radians() == 0.75);
  CHECK((dart - Angle::radians(0.75)).radians() == -0.25);
  CHECK((2.0 * dart).radians() == 1.0);
  CHECK((dart / 2.0).radians() == 0.25);
  CHECK((-dart).radians() == -0.5);
  CHECK(-dart < dart);
}
