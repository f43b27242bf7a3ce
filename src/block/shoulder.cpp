#include "blockwright/block/shoulder.hpp"

namespace blockwright {

Dart shoulder_dart(const DartPosition& position, Point apex, Point inner_leg, Point outer_leg,
                   Vec along, double hold_back) {
  Dart dart;
  dart.name = position.name;
  dart.edge = position.edge;
  dart.apex = apex;
  dart.legs = {outer_leg, inner_leg};
  dart.pressed_to = position.pressed_to;
  dart = held_back(dart, hold_back);
  dart.peak = dart_peak(dart.point, inner_leg, outer_leg, along);
  return dart;
}

Path shoulder_edge(Point shoulder_point, const Dart& dart, Point side_neck) {
  return Path::through({shoulder_point, dart.legs[0], dart.peak, dart.legs[1], side_neck});
}

}  // namespace blockwright
