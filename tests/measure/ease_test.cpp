#include "blockwright/measure/body.hpp"

#include <catch2/catch.hpp>

#include <cmath>

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
TEST_CASE("the other defaults lie where practice has them") {
  const Ease ease = Ease::of_toile();
  CHECK(ease[AcrossBack] >= Length::mm(0));
  CHECK(ease[AcrossBack] <= Length::mm(10));
  CHECK(ease[AcrossFront] > Length::mm(0));
  CHECK(ease[AcrossFront] <= Length::mm(10));
  CHECK(ease[ArmscyeGirth] >= Length::mm(20));
  CHECK(ease[ArmscyeGirth] <= Length::mm(90));
}

TEST_CASE("lengths that hang from the shoulder are eased, and the back more than the front") {
  const Ease ease = Ease::of_toile();
  for (const MeasurementName name : {SideNeckToBustPoint, SideNeckToWaist, FrontShoulderSlant,
                                     BackShoulderSlant, BackWaistLength}) {
    INFO(info(name).key);
    CHECK(ease[name] > Length());
  }
  CHECK(ease[BackShoulderSlant] > ease[FrontShoulderSlant]);
}

// The survey's mean body (Gordon et al. 1989): side neck point 68 mm from the centre line.
struct MeanShoulder {
  double side_neck_height;  // above the centre waist
  double rises;             // by the ease of the length that carries it
  Length slant_ease;
};

// How much flatter the shoulder becomes by its slant's ease, in degrees: the shoulder point lies
// where the slant's circle cuts that of the shoulder length.
double flatter_by(const MeanShoulder& mean) {
  constexpr double kWidth = 68.0, kLength = 144.65, kSlope = 25.74, kDegree = 0.017453292519943295;
  const auto slant = [&](double height, double slope) {
    return std::hypot(kWidth + kLength * std::cos(slope * kDegree),
                      height - kLength * std::sin(slope * kDegree));
  };
  const double asked = slant(mean.side_neck_height, kSlope) + mean.slant_ease.mm();
  double flat = 0.0, steep = 45.0;
  while (steep - flat > 1e-9) {
    const double middle = 0.5 * (flat + steep);
    (slant(mean.side_neck_height + mean.rises, middle) > asked ? flat : steep) = middle;
  }
  return kSlope - flat;
}

TEST_CASE("the slope's ease is what the slants' ease does to the mean shoulder") {
  const Ease ease = Ease::of_toile();
  const Length bust_point_sinks = ease.length(SideNeckToBustPoint) - ease.length(SideNeckToWaist);
  const double front_rises = (ease.length(SideNeckToBustPoint) - bust_point_sinks).mm();
  const double front = flatter_by({384.0, front_rises, ease.length(FrontShoulderSlant)});
  const double back =
      flatter_by({399.0, ease.length(BackWaistLength).mm(), ease.length(BackShoulderSlant)});
  CHECK(-ease[ShoulderSlope].number() == Approx(0.5 * (front + back)).margin(0.25));
}

// 1988 survey: 1st to 99th percentile 16.4 to 34.8 degrees. The finished shoulder must have 8 to
// 36.
TEST_CASE("the eased slope stays between 8 and 36 degrees on 98 in 100 of the survey's slopes") {
  const double slope_ease = Ease::of_toile()[ShoulderSlope].number();
  CHECK(16.4 + slope_ease >= 8.0);
  CHECK(34.8 + slope_ease <= 36.0);
}

TEST_CASE("what does not close the draft, and what must not give, has no ease") {
  const Ease ease = Ease::of_toile();
  for (const MeasurementName name : {UnderbustGirth, HipGirth, UpperArmGirth, ShoulderLength,
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
