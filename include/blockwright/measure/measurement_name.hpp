#pragma once

#include "blockwright/base/length.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace blockwright {

/// The measurements of a tape session. Keys in files are the same words in snake_case
/// (BustGirth = "bust_girth"). All girths are whole girths and all widths whole widths.
enum class MeasurementName {
  BustGirth,
  UpperChestGirth,
  UnderbustGirth,
  WaistGirth,
  HipGirth,
  NeckBaseGirth,
  ArmscyeGirth,
  UpperArmGirth,
  ShoulderLength,
  ShoulderSlope,
  FrontShoulderSlant,
  BackShoulderSlant,
  BackWaistLength,
  FrontWaistLength,
  SideNeckToBustPoint,
  SideNeckToWaist,
  BustPointWidth,
  AcrossBack,
  AcrossFront,
  SideLength,
  ScyeDepth,
  FrontBustWidth,
  WaistToHip,
  Stature,
};

inline constexpr std::size_t kMeasurementCount = 24;

/// Whether a measurement is a length or an angle.
enum class MeasurementKind { Girth, Length, Angle };

/// What the catalogue says of one measurement.
struct MeasurementInfo {
  MeasurementName name;
  std::string_view key;       ///< "bust_girth"
  std::string_view iso_term;  ///< the ISO 8559-1 name, or the trade's where ISO has none
  std::string_view how;       ///< how to take it, one or two sentences
  std::string_view closes;    ///< the unknown of the draft that it closes
  MeasurementKind kind;
  /// Readings outside are refused as slips: in mm, or degrees for an angle.
  double least;
  double most;
};

/// All measurements in the order in which a session takes them.
const std::array<MeasurementInfo, kMeasurementCount>& measurement_catalogue();
const MeasurementInfo& info(MeasurementName name);
std::optional<MeasurementName> measurement_named(std::string_view key);

}  // namespace blockwright
