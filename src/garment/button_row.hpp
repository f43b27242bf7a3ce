#pragma once

#include <optional>

namespace blockwright {

/// The line that buttons sit on, in mm from its upper end.
struct ButtonLine {
  double first = 0.0;                  ///< no button higher
  double last = 0.0;                   ///< nor lower
  std::optional<double> bust = {};     ///< the level of the bust point
  std::optional<double> spacing = {};  ///< asked for
};

/// Buttons at equal distances.
struct ButtonRow {
  double first = 0.0;
  double spacing = 0.0;
  int count = 0;
  bool at_bust = false;
};

/// As many as the line takes, the first as high as it may be: one at the bust level where that
/// leaves two buttons or more. Spaced as asked for, else kCloseButtons to kWideButtons. Under two
/// where the line is too short.
ButtonRow row_on(const ButtonLine& line);

}  // namespace blockwright
