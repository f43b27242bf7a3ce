#include "blockwright/measure/ease.hpp"

namespace blockwright {
namespace {

using enum MeasurementName;

struct DefaultEase {
  MeasurementName name;
  double ease;  // mm on the whole measurement; degrees for the shoulder slope
};

// The close-fitting toile. Whole girths and widths:
constexpr std::array<DefaultEase, 13> kToileEase{{
    // 38 to 51 mm in a university costume text (Central Washington University, ch. 16), up to
    // 100 mm in a textbook's close-fitting block (from memory).
    {BustGirth, 50.0},
    // 19 to 25 mm for a dress in the same costume text, 25 to 50 mm elsewhere.
    {WaistGirth, 25.0},
    // Our rule: the armhole's share of the bust ease; no source.
    {UpperChestGirth, 20.0},
    // 5 mm on each half: a textbook's close-fitting block (from memory).
    {AcrossBack, 10.0},
    // Common practice, no source: less than the back, as arms reach forward.
    {AcrossFront, 6.0},
    // Textbook armholes at bust 88 cm are 400 to 430 mm (from memory) on a body armscye of 365 mm
    // there (the 1988 survey): body + 35 mm is the close end.
    {ArmscyeGirth, 35.0},
    // Lengths that hang from the shoulder. Without ease the whole bodice sits high. Found on ten
    // simulated torsos of survey proportions, four to choose and six to check: they cut the
    // corrections of the first toile to a third.
    {SideNeckToBustPoint, 8.0},
    {SideNeckToWaist, 8.0},
    {FrontShoulderSlant, 16.0},
    {BackShoulderSlant, 20.0},
    // 0 to 6 mm is common practice, no source.
    {BackWaistLength, 2.0},
    // Our rule: the lift that the slants' ease gives, 9 mm on the front and 18 mm on the back of a
    // shoulder of 145 mm, is 5.5 degrees on the mean of both. It keeps the finished slope between 8
    // and 36 degrees on nearly all of the survey's slopes of 12 to 40.
    {ShoulderSlope, -5.5},
    // The front's half of the bust's ease.
    {FrontBustWidth, 25.0},
}};

constexpr double kMostLengthEase = 200.0;  // mm
constexpr double kMostSlopeEase = 15.0;    // degrees

}  // namespace

double most_ease(MeasurementName name) {
  return info(name).kind == MeasurementKind::Angle ? kMostSlopeEase : kMostLengthEase;
}

Ease Ease::of_toile() {
  Ease ease;
  for (const DefaultEase& entry : kToileEase) ease.set(entry.name, entry.ease);
  return ease;
}

Ease Ease::of(const Client& client) {
  Ease ease = of_toile();
  if (const auto& bust = client.ease[BustGirth]) ease.set(FrontBustWidth, 0.5 * *bust);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (const auto& override_mm = client.ease[entry.name]) ease.set(entry.name, *override_mm);
  }
  return ease;
}

}  // namespace blockwright
