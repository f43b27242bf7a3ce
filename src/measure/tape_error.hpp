#pragma once

#include "blockwright/measure/measurement_name.hpp"

#include <array>
#include <cstddef>

namespace blockwright {

/// How far repeated readings may lie apart, and beyond twice that is a warning. Our judgement, from
/// the differences allowed between scan and hand measure (ISO 20685: 9 mm on large girths, 4 to 5
/// mm on lengths); the degrees are about what 5 mm make at the end of a shoulder.
inline constexpr ByKind kUsualSpread{
    .girth = Length::mm(10), .length = Length::mm(5), .angle = Measure::degrees(2)};
/// A value further off what the others lead one to expect is questioned, in residual SD. The
/// largest of 2,208 residuals lies at 3.4 to 5.1 by item (1988 survey).
inline constexpr double kDoubtfulSd = 3.0;
/// Readings in inches are no round mm: what a limit may be passed by before it counts.
inline constexpr double kRounding = 0.01;

/// The SD of one careful reading by a home maker, about what an expert would read on the same day.
struct TapeError {
  MeasurementName name = MeasurementName::NoMeasurement;
  Measure sd;
};

// Ours, near what ISO 20685 lets an expert's hand measure and a scan differ by in the mean (9 mm on
// large girths, 4 on small ones, 5 on lengths; sources.md): a little less where a bone or the tied
// waist tape says where to measure, more where that is a matter of judgement. Breath and posture
// are in it, so it is more than the spread of readings taken one after the other.
inline constexpr std::array<TapeError, kMeasurementCount> kTapeErrors = [] {
  using enum MeasurementName;
  constexpr auto mm = [](double value) { return Length::mm(value); };
  return std::array<TapeError, kMeasurementCount>{{
      {BustGirth, mm(7)},
      {UpperChestGirth, mm(8)},  // high in the armpits, where the tape slips
      {UnderbustGirth, mm(6)},
      {WaistGirth, mm(6)},  // tied, but it breathes
      {HipGirth, mm(7)},
      {NeckBaseGirth, mm(5)},
      {ArmscyeGirth, mm(7)},  // pulled or loose under the arm
      {UpperArmGirth, mm(4)},
      {ShoulderLength, mm(4)},
      {ShoulderSlope, Measure::degrees(1.5)},  // 4 mm at the end of a shoulder
      {FrontShoulderSlant, mm(6)},             // the tape bridges a hollow
      {BackShoulderSlant, mm(6)},
      {BackWaistLength, mm(5)},
      {FrontWaistLength, mm(5)},
      {SideNeckToBustPoint, mm(5)},
      {SideNeckToWaist, mm(7)},  // over the breast
      {BustPointWidth, mm(5)},
      {AcrossBack, mm(8)},       // no bone says where the armhole line runs
      {AcrossFront, mm(8)},      // nor here
      {SideLength, mm(7)},       // how far up under the arm
      {ScyeDepth, mm(6)},        // the same level, by a tape round the chest
      {FrontBustWidth, mm(10)},  // from side seam to side seam, wherever these are
      {WaistToHip, mm(6)},
      {Stature, mm(6)},
  }};
}();

consteval bool in_order_of_names(const std::array<TapeError, kMeasurementCount>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (static_cast<std::size_t>(rows[i].name) != i) return false;
    const bool is_angle = info(rows[i].name).kind == MeasurementKind::Angle;
    if (rows[i].sd.is_angle() != is_angle || rows[i].sd.number() <= 0.0) return false;
  }
  return true;
}
static_assert(in_order_of_names(kTapeErrors), "each measurement has its tape error");

}  // namespace blockwright
