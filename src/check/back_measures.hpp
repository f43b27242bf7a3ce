#pragma once

#include "blockwright/measure/measurement_name.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <span>
#include <string_view>
#include <variant>

namespace blockwright {

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

/// All measurements, in their order.
std::span<const BackMeasure> back_measures();

}  // namespace blockwright
