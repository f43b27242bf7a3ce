#pragma once

#include "blockwright/measure/measurement_name.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace blockwright {

/// One row of the fitting catalogue (docs/fitting.md): a fault, as it is seen on the body, and how
/// much of a correction it usually takes. Amounts are mm as the row counts them: how far a point
/// moves, or cloth on one half of the body. All amounts: common practice, no source.
struct FittingRow {
  int number = 0;
  std::string_view name;
  std::string_view seen;   ///< on the body
  std::string_view cause;  ///< in the draft or in the tape
  int stage = 0;           ///< 0 to 8, see stage_name()
  std::vector<int> voids;  ///< rows whose judgement this one makes void until the next toile
  double usual = 0.0, least = 0.0, most = 0.0;  ///< mm
  /// The measurement that it calls into doubt, and what that would change by, whole, for each mm.
  std::optional<MeasurementName> doubts;
  double doubt_per_mm = 0.0;
  /// Where fault and cure were read.
  std::string_view source;
  std::string_view reverse_name = {};  ///< what `name` is when it is done the other way
};

/// All 49 rows, by number.
const std::vector<FittingRow>& fitting_catalogue();
/// Throws std::logic_error if there is no such row.
const FittingRow& fitting_row(int number);

/// The row's name in the direction of `sign`: "bust taken in at the side" for the reverse of 49.
std::string_view row_name(int number, int sign);

/// "lengths and balance" ...: what is judged at a stage. A change at one stage makes every
/// judgement of a later stage void. Order of work: common practice, no source; that the cross grain
/// and the shoulders come first: USDA, "Fitting Dresses", rev. 1946, and H. Roberts, "Garment
/// Fitting", Washington State University E.M. 2246, 1962.
std::string_view stage_name(int stage);

/// Beyond these a measurement is taken again and the block drafted anew, in mm and degrees. Our
/// judgement; common practice, no source.
inline constexpr double kRedraftGirth = 25.0;
inline constexpr double kRedraftLength = 13.0;
inline constexpr double kRedraftSlope = 4.0;
double redraft_limit(MeasurementName name);

}  // namespace blockwright
