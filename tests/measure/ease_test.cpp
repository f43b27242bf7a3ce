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
  // The mean body's nape lies 367.3 mm over the waist; the back side neck point is drawn 0.40 of
  // the neck's width over the nape (kBackNeckRise).
  const double back_rises = ease.length(BackWaistLength).mm() + 367.3 + 0.40 * 68.0 - 399.0;
  const double back = flatter_by({399.0, back_rises, ease.length(BackShoulderSlant)});
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

// Of a bust of 900 mm; the survey's mean cup is 137 mm.
Body with_cup(double cup) {
  Session session{"2026-03-14", {}, {}};
  session.tape[BustGirth] = Readings{{Length::mm(900)}};
  session.tape[UnderbustGirth] = Readings{{Length::mm(900 - cup)}};
  return fill_in(session);
}

TEST_CASE(
    "a fuller cup has more ease on the lengths of the front and on the slants, and no other") {
  const Ease usual = Ease::of_toile(), small = usual.worn_by(with_cup(100)),
             full = usual.worn_by(with_cup(200));
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.key);
    const bool grows = entry.name == SideNeckToBustPoint || entry.name == SideNeckToWaist ||
                       entry.name == FrontWaistLength || entry.name == FrontShoulderSlant ||
                       entry.name == BackShoulderSlant;
    const double more = full[entry.name].number() - small[entry.name].number();
    CHECK(more == Approx(100.0 * entry.ease.per_cup));
    CHECK((more > 0.0) == grows);
    const double at_usual = usual.worn_by(with_cup(137))[entry.name].number();
    CHECK(at_usual == Approx(usual[entry.name].number()).margin(0.1));
  }
}

TEST_CASE("beyond the torsos' cups the ease grows no more, and once it is a person's it stays") {
  const Ease usual = Ease::of_toile();
  const Ease most = usual.worn_by(with_cup(260)), beyond = usual.worn_by(with_cup(330));
  const Ease least = usual.worn_by(with_cup(60)), below = usual.worn_by(with_cup(30));
  CHECK(most[SideNeckToWaist] == beyond[SideNeckToWaist]);
  CHECK(least[SideNeckToWaist] == below[SideNeckToWaist]);
  CHECK(most.worn_by(with_cup(60))[SideNeckToWaist] == most[SideNeckToWaist]);
}

TEST_CASE("an ease of the client's is the same whatever the cup") {
  Client client;
  client.ease[SideNeckToWaist] = Length::mm(20);
  CHECK(Ease::of(client).worn_by(with_cup(240))[SideNeckToWaist] == Length::mm(20));
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
