#include "button_row.hpp"

#include "blockwright/garment/opening.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Midway between the closest and the widest.
constexpr double kUsualSpacing = 0.5 * (kCloseButtons + kWideButtons);
// A space that fits to within this fits, in mm.
constexpr double kFits = 1e-6;

int spaces_in(double length, double spacing) {
  return static_cast<int>(std::floor((length + kFits) / spacing));
}

// So that a button sits at each end of a stretch, as near as the usual bounds let it.
double spacing_over(double stretch) {
  const double spaces = std::max(1.0, std::round(stretch / kUsualSpacing));
  return std::clamp(stretch / spaces, kCloseButtons, kWideButtons);
}

// The same for the stretch over the bust level; one that is too short for a space has no say.
double spacing_over_bust(double over, double under) {
  if (over < kCloseButtons) return spacing_over(under);
  return spacing_over(over);
}

ButtonRow row_from(double first, double last, double spacing) {
  return {first, spacing, spaces_in(last - first, spacing) + 1, false};
}

}  // namespace

ButtonRow row_on(const ButtonLine& line) {
  if (line.bust && *line.bust >= line.first && *line.bust <= line.last) {
    const double over = *line.bust - line.first, under = line.last - *line.bust;
    const double spacing = line.spacing.value_or(spacing_over_bust(over, under));
    ButtonRow row = row_from(*line.bust - spaces_in(over, spacing) * spacing, line.last, spacing);
    row.at_bust = true;
    if (row.count > 1) return row;
  }
  const double whole = line.last - line.first;
  if (whole < 0.0) return {};
  return row_from(line.first, line.last, line.spacing.value_or(spacing_over(whole)));
}

}  // namespace blockwright
