#include "blockwright/fit/full_bust.hpp"

#include "blockwright/base/error.hpp"

#include <cmath>

namespace blockwright {

// width = aside (1 - cos turn) + below sin turn = aside + reach sin(turn - lean), where reach and
// lean are the bust point's distance from the hinge and its direction from straight below.
FullBust full_bust(double width, double aside, double below) {
  require(below > 0.0 && std::abs(width) < below, "no turn opens such a gap");
  const double reach = std::hypot(aside, below), lean = std::atan2(aside, below);
  const double turn = std::asin((width - aside) / reach) + lean;
  return {Angle::radians(turn), aside * std::sin(turn) - below * (1.0 - std::cos(turn))};
}

}  // namespace blockwright
