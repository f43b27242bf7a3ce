#include "blocks.hpp"

#include "rules.hpp"

#include <algorithm>

namespace blockwright {

Point dart_point(Point apex, Point leg_a, Point leg_b, double hold_back) {
  const double leg = distance(apex, leg_a);
  const double held = std::min(hold_back, (1.0 - rules::kLeastStitched) * leg);
  return apex + held * unit(midpoint(leg_a, leg_b) - apex);
}

}  // namespace blockwright
