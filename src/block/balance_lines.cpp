#include "blockwright/block/balance_lines.hpp"

namespace blockwright {

Path bust_line(Point centre, std::optional<Point> bust_point, Point side) {
  if (!bust_point) return Path::through({centre, side});
  return without_straight_joints(Path::through({centre, *bust_point, side}));
}

double share_of_leg(const Dart& dart, double level) {
  return (level - dart.apex.y) / (dart.legs[1].y - dart.apex.y);
}

Path across_line_over_dart(Point centre, const Dart& dart, Angle angle, Point across) {
  const Point inner = between(dart.apex, dart.legs[1], share_of_leg(dart, centre.y));
  return Path::through({centre, inner, rotated_about(inner, dart.apex, -angle), across});
}

}  // namespace blockwright
