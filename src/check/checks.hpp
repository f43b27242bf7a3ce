#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <span>
#include <string_view>
#include <variant>

namespace blockwright {

/// Every measurement of the body that closes an unknown, taken again on the pieces. The slope is
/// left out where slants close the shoulders, unless it was taped.
std::vector<MeasureBack> measure_back(const CheckInput& input);

/// check.measure_back: a measurement does not come back.
Problems check_measure_back(const CheckInput& input);
/// draft.adjusted: a bound changed a measurement.
Problems check_limits(const CheckInput& input);

/// pattern.broken: a piece's own invariants.
Problems broken_pieces(const Pattern& pattern);
/// check.seam: joined edges are equally long, less their ease-in; notches on them agree.
Problems unequal_seams(const Pattern& pattern);
/// check.angle: square corners and smooth joined seams.
Problems check_angles(const CheckInput& input);
/// check.curve: necklines bend one way, armholes turn back at most once, and no curve bends within
/// less than its kind's least radius.
Problems check_curves(const CheckInput& input);
/// check.dart: no edge but its own runs across a dart.
Problems check_darts(const CheckInput& input);
/// check.level: the bust line meets itself at the side seam.
Problems check_levels(const CheckInput& input);
/// check.armhole: the armhole keeps clear of the waist, the back's rises to its across point, the
/// front's does not hang below its underarm point; its length against the armscye, its width
/// against the arm.
Problems check_armhole(const CheckInput& input);

/// Why a measurement of the body has nothing to be compared with on the pieces.
enum class NotOnPieces {
  OnlyEstimates,  ///< closes nothing of the bodice; it makes estimates of others better
  OnlyShares,     ///< says how another is shared between front and back
  OnlyALevel,     ///< says at which height others are drawn
};

/// The whole measurement on the finished pieces of a block with their darts closed: mm, degrees for
/// an angle.
using OnPieces = double (*)(const Pattern&);

/// One row: how a measurement is measured back, and what to take again where it had to give way.
struct BackMeasure {
  MeasurementName name;
  std::variant<OnPieces, NotOnPieces> how;
  std::string_view take_again = "take this measurement again";
};

/// True if the rows are those of all measurements, in their order, each with a function or a
/// reason.
constexpr bool covers_every_measurement(std::span<const BackMeasure> rows) {
  if (rows.size() != kMeasurementCount) return false;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto* on_pieces = std::get_if<OnPieces>(&rows[i].how);
    if (static_cast<std::size_t>(rows[i].name) != i) return false;
    if (on_pieces != nullptr && *on_pieces == nullptr) return false;
  }
  return true;
}

/// The bust line on each piece of a block, from the centre to the side, in mm.
double front_bust_line(const Pattern& block);
double back_bust_line(const Pattern& block);

/// The width of the armhole of a block, from across point to across point past both underarms, mm.
double armhole_width(const Pattern& block);

/// All measurements, in their order.
std::span<const BackMeasure> back_measures();

}  // namespace blockwright
