#pragma once

#include "blockwright/measure/likely_slips.hpp"

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace blockwright {

/// A slip put into a session that was taken well.
struct PlantedSlip {
  std::string_view name;  ///< of the slip that must be named; empty: any
  std::vector<MeasurementName> moved;
  Session session;
};

/// Of the people in whom a slip was planted: how many were told something that they were not told
/// before, or refused; of these how many were told the measurements that were moved, and the slip
/// by its name.
struct SlipRate {
  int planted = 0, caught = 0, right = 0, named = 0;

  [[nodiscard]] double share_caught() const { return share(caught, planted); }
  [[nodiscard]] double share_right() const { return share(right, caught); }
  [[nodiscard]] double share_named() const { return share(named, caught); }
  void add(const SlipRate& other);

 private:
  static double share(int part, int whole) { return whole == 0 ? 0.0 : 1.0 * part / whole; }
};

/// Plants a slip in the i-th person; none where it cannot be made.
using PlantSlip = std::function<std::optional<PlantedSlip>(const Session&, std::size_t i)>;
SlipRate rate_of(const std::vector<Session>& people, const PlantSlip& plant);

/// One value too large and too small by so much in turn (mm or degrees).
PlantSlip off_by(MeasurementName name, double by);
/// Two neighbouring digits that differ, as written in cm, the other way round; each place in turn.
PlantSlip digits_swapped(MeasurementName name);
/// Inches, to the next eighth, in a file in cm.
PlantSlip in_inches(MeasurementName name);
/// The waist taped too low, mm: all lengths from it that were taken.
PlantSlip waist_low(double by);

}  // namespace blockwright
