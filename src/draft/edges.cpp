#include "edges.hpp"

#include "blockwright/pattern/dart_position.hpp"

namespace blockwright {

WaistWithDarts waist_with_darts(const WaistEdge& edge, const std::string& name, double hold_back) {
  WaistWithDarts waist;
  waist.path = edge.stretches.front();
  for (std::size_t i = 0; i < edge.darts.size(); ++i) {
    const WaistDart& d = edge.darts[i];
    Dart dart;
    dart.name = i == 0 ? name : name + "_outer";
    dart.edge = "waist";
    dart.apex = d.apex;
    dart.legs = {d.inner_leg, d.outer_leg};
    dart = held_back(dart, hold_back);
    dart.cap = dart_cap(dart.point, d.inner_leg, d.outer_leg, end_tangent(edge.stretches[i]));
    waist.path.add(Segment{d.inner_leg, dart.cap});
    waist.path.add(Segment{dart.cap, d.outer_leg});
    waist.path.add(edge.stretches[i + 1]);
    waist.darts.push_back(dart);
  }
  return waist;
}

Path shoulder_edge(Point shoulder_point, const Dart& dart, Point side_neck) {
  return Path::through({shoulder_point, dart.legs[0], dart.cap, dart.legs[1], side_neck});
}

Dart shoulder_dart(const std::string& name, Point apex, Point inner_leg, Point outer_leg, Vec along,
                   double hold_back) {
  Dart dart;
  dart.name = name;
  dart.edge = "shoulder";
  dart.apex = apex;
  dart.legs = {outer_leg, inner_leg};
  dart.pressed_to = Leg::Second;
  dart = held_back(dart, hold_back);
  dart.cap = dart_cap(dart.point, inner_leg, outer_leg, along);
  return dart;
}

}  // namespace blockwright
