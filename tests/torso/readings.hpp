#pragma once

#include "torso/relax.hpp"

#include <array>
#include <string_view>
#include <vector>

namespace blockwright::torso {

/// What a fitter reads off the toile on the body, each against the place where it belongs.
enum class ReadingName {
  BustPoint,
  BustPointsApart,
  FrontWaist,
  SideWaist,
  BackWaist,
  FrontNeck,
  BackNeck,
  SideNeck,
  NeckGirth,
  FrontNeckEdge,
  BackNeckEdge,
  ShoulderPoint,
  ShoulderPointOff,
  ShoulderSeam,
  Underarm,
  FrontArmholeEdge,
  BackArmholeEdge,
  BustEase,
  WaistEase,
  SideSeam,
  NoReading,  ///< stays last, so that the count follows
};
inline constexpr auto kReadingCount = static_cast<std::size_t>(ReadingName::NoReading);

/// One row of the table of readings.
struct ReadingInfo {
  ReadingName name;
  std::string_view head;  ///< of its column
  /// Below this, in mm either way, a fitter does nothing. All ours.
  double threshold;
  /// The correction in the words of `fit` where the reading is positive, and where it is negative
  /// (blockwright/measure/correction_table.hpp).
  std::string_view positive, negative;
};

/// In the order of the names.
const std::array<ReadingInfo, kReadingCount>& reading_table();

/// In mm, by name.
struct FitReadings {
  std::array<double, kReadingCount> mm{};
  [[nodiscard]] double operator[](ReadingName name) const {
    return mm[static_cast<std::size_t>(name)];
  }
  double& operator[](ReadingName name) { return mm[static_cast<std::size_t>(name)]; }
};

/// How far a reading is over its threshold, 0 within.
double excess(const FitReadings& readings, ReadingName name);
/// The sum over all readings: the score, mm. Less is better.
double excess(const FitReadings& readings);

FitReadings read_off(const Cloth& cloth, const Relaxed& rest, const Torso& body);

/// A toile tried on twice from two starts: the readings of the rest with the lower energy.
struct TriedOn {
  Relaxed rest;
  FitReadings readings;
  double spread = 0.0;         ///< largest difference of any reading between the two, mm
  double excess_spread = 0.0;  ///< difference of the scores, mm
};
TriedOn tried_on(const Cloth& cloth, const Torso& body, const ClothKind& kind = {});

}  // namespace blockwright::torso
