#include "blockwright/measure/body.hpp"

#include <catch2/catch.hpp>

namespace blockwright {
namespace {

using enum MeasurementName;

// Published spans on the whole girth of a woven fitted garment: bust 38 to 100 mm, waist 19 to
// 50 mm (a university costume text, two sewing sites, a textbook from memory).
TEST_CASE("the defaults for bust and waist lie inside the published spans") {
  const Ease ease = Ease::of_toile();
  CHECK(ease[BustGirth] >= Length::mm(38));
  CHECK(ease[BustGirth] <= Length::mm(100));
  CHECK(ease[WaistGirth] >= Length::mm(19));
  CHECK(ease[WaistGirth] <= Length::mm(50));
}

// A textbook's close-fitting block: 5 mm on each half of the back (from memory).
// The armhole is 20 to 90 mm longer than the body's armscye (textbook blocks, from memory).
// Back waist length 0 to 6 mm: common practice, no source.
TEST_CASE("the other defaults lie where practice has them") {
  const Ease ease = Ease::of_toile();
  CHECK(ease[AcrossBack] == Length::mm(10));
  CHECK(ease[AcrossFront] > Length::mm(0));
  CHECK(ease[AcrossFront] <= ease[AcrossBack]);
  CHECK(ease[ArmscyeGirth] >= Length::mm(20));
  CHECK(ease[ArmscyeGirth] <= Length::mm(90));
  CHECK(ease[BackWaistLength] >= Length::mm(0));
  CHECK(ease[BackWaistLength] <= Length::mm(6));
}

TEST_CASE("lengths that hang from the shoulder are eased, the bust point keeping its waist") {
  const Ease ease = Ease::of_toile();
  CHECK(ease[SideNeckToBustPoint] == ease[SideNeckToWaist]);
  CHECK(ease[FrontShoulderSlant] > ease[SideNeckToWaist]);
  CHECK(ease[BackShoulderSlant] > ease[FrontShoulderSlant]);
}

// 1988 survey: one woman in a thousand has a slope under 14.6 degrees, the largest is 39.9. The
// finished shoulder must have 8 to 36.
TEST_CASE("the eased slope stays between 8 and 36 degrees on the survey's slopes") {
  const double slope_ease = Ease::of_toile()[ShoulderSlope].number();
  CHECK(14.6 + slope_ease >= 8.0);
  CHECK(39.9 + slope_ease <= 36.0);
}

TEST_CASE("what does not close the draft, and what must not give, has no ease") {
  const Ease ease = Ease::of_toile();
  for (const MeasurementName name :
       {UnderbustGirth, HipGirth, NeckBaseGirth, UpperArmGirth, ShoulderLength, FrontWaistLength,
        BustPointWidth, SideLength, ScyeDepth, WaistToHip, Stature}) {
    INFO(info(name).key);
    CHECK(ease[name] == Length());
  }
}

TEST_CASE("the front bust width has half of the bust's ease, the client's too") {
  CHECK(Ease::of_toile()[FrontBustWidth] == 0.5 * Ease::of_toile()[BustGirth]);
  Client client;
  client.ease[BustGirth] = Length::mm(80);
  CHECK(Ease::of(client)[FrontBustWidth] == Length::mm(40));
  client.ease[FrontBustWidth] = Length::mm(30);
  CHECK(Ease::of(client)[FrontBustWidth] == Length::mm(30));
}

TEST_CASE("a client's ease takes the place of the default and of nothing else") {
  Client client;
  client.ease[BustGirth] = Length::mm(80);
  client.ease[HipGirth] = Length::mm(55);
  client.ease[WaistGirth] = Length::mm(0);
  const Ease ease = Ease::of(client);
  CHECK(ease[BustGirth] == Length::mm(80));
  CHECK(ease[HipGirth] == Length::mm(55));
  CHECK(ease[WaistGirth] == Length::mm(0));
  CHECK(ease[AcrossBack] == Ease::of_toile()[AcrossBack]);
}

}  // namespace
}  // namespace blockwright
