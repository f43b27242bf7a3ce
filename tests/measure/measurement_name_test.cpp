#include "blockwright/measure/measurement_name.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>

namespace blockwright {
namespace {

bool mentions(std::string_view text, std::string_view word) {
  return text.find(word) != std::string_view::npos;
}

TEST_CASE("the catalogue has one complete entry for each measurement, in order") {
  std::set<std::string_view> keys;
  for (std::size_t i = 0; i < kMeasurementCount; ++i) {
    const MeasurementInfo& entry = measurement_catalogue()[i];
    INFO(entry.key);
    CHECK(static_cast<std::size_t>(entry.name) == i);
    CHECK(&info(entry.name) == &entry);
    CHECK(measurement_named(entry.key) == entry.name);
    CHECK(keys.insert(entry.key).second);
    CHECK(entry.key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string_view::npos);
    CHECK(entry.iso_term.size() > 5);
    CHECK(entry.how.size() > 30);
    CHECK(entry.how.back() == '.');
    CHECK_FALSE(entry.closes.empty());
  }
  CHECK_FALSE(measurement_named("inside_leg").has_value());
}

TEST_CASE("clause numbers of ISO 8559-1 come with the year") {
  int clauses = 0;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    INFO(entry.iso_term);
    CHECK(mentions(entry.iso_term, "5.") == mentions(entry.iso_term, "ISO 8559-1:2017, 5."));
    clauses += mentions(entry.iso_term, "ISO") ? 1 : 0;
  }
  CHECK(clauses >= 10);
}

TEST_CASE("the waist is the natural waist, and its entry says how to find it") {
  const MeasurementInfo& waist = info(MeasurementName::WaistGirth);
  CHECK(mentions(waist.iso_term, "natural waist"));
  CHECK(mentions(waist.how, "settle"));
}

TEST_CASE("the front bust width runs from side seam to side seam") {
  CHECK(mentions(info(MeasurementName::FrontBustWidth).how, "side seam to side seam"));
}

// Smallest and largest of the 2,208 women of the 1988 survey, mm (Gordon et al. 1989,
// NATICK/TR-89/044), and the builds beyond it that a maker meets (bust 71 to 140 cm, slope 10 to 40
// degrees): all must be accepted.
struct Seen {
  MeasurementName name;
  double least;
  double most;
};
constexpr Seen kSeen[] = {
    {MeasurementName::BustGirth, 710, 1400},          {MeasurementName::UpperChestGirth, 753, 1300},
    {MeasurementName::UnderbustGirth, 640, 1250},     {MeasurementName::WaistGirth, 568, 1450},
    {MeasurementName::HipGirth, 787, 1500},           {MeasurementName::NeckBaseGirth, 298, 480},
    {MeasurementName::ArmscyeGirth, 298, 600},        {MeasurementName::UpperArmGirth, 223, 500},
    {MeasurementName::ShoulderLength, 100, 182},      {MeasurementName::ShoulderSlope, 10, 40},
    {MeasurementName::BackWaistLength, 283, 477},     {MeasurementName::FrontWaistLength, 238, 404},
    {MeasurementName::SideNeckToBustPoint, 202, 400}, {MeasurementName::BustPointWidth, 128, 270},
    {MeasurementName::AcrossBack, 284, 500},          {MeasurementName::SideLength, 105, 268},
    {MeasurementName::ScyeDepth, 142, 260},           {MeasurementName::WaistToHip, 126, 301},
    {MeasurementName::Stature, 1400, 2000},
};

TEST_CASE("the limits accept every body of the survey and the extremes beyond it") {
  for (const Seen& seen : kSeen) {
    INFO(info(seen.name).key);
    CHECK(info(seen.name).least.number() <= seen.least);
    CHECK(info(seen.name).most.number() >= seen.most);
  }
}

TEST_CASE("the limits refuse the survey's bodies in the wrong unit or ten times off") {
  for (const Seen& seen : kSeen) {
    const MeasurementInfo& entry = info(seen.name);
    INFO(entry.key);
    CHECK(entry.most.number() / entry.least.number() < 10.0);
    if (entry.kind == MeasurementKind::Angle) continue;
    const double middle = std::sqrt(seen.least * seen.most);
    CHECK(middle * 2.54 > entry.most.number());   // cm in an inch file
    CHECK(middle / 2.54 < entry.least.number());  // inches in a cm file
    CHECK(seen.least * 10.0 > entry.most.number());
    CHECK(seen.most / 10.0 < entry.least.number());
  }
}

}  // namespace
}  // namespace blockwright
