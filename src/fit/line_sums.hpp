#pragma once

#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace blockwright {

/// A line or dart that several corrections may pull on, by its name in Effect; the measurement that
/// the sum of them calls into doubt.
struct Line {
  std::string_view name;
  std::optional<MeasurementName> measured = std::nullopt;

  bool operator==(const Line&) const = default;
};

/// What two corrections or more did to a line.
struct LineSum {
  Line line;
  std::vector<const Effect*> pulling;
  double by = 0.0;  ///< mm

  bool operator==(const LineSum&) const = default;
};

/// By the lengths that moved, whichever rows moved them; sums of the right half and of the left
/// once, where they are the same. A girth is of both halves, whichever was corrected.
std::vector<LineSum> sums_of(const std::vector<Effect>& effects);

/// "fit.same_line"; or "fit.limit" where the sum is more than a measurement may be off before it is
/// taken again.
Problem said_of(const LineSum& sum);

/// Whether the measurement that a correction calls into doubt is in doubt by one of the sums, which
/// names the correction.
bool is_said_in(const std::vector<LineSum>& sums, const Effect& effect);

/// True unless one is of the left side and the other of the right.
bool same_body(BodySide a, BodySide b);

/// Less is what goes along with a correction, and no pull on a line, in mm. Ours.
inline constexpr double kLeastPull = 2.0;

}  // namespace blockwright
