#include "parts.hpp"

#include "blockwright/geometry/intersections.hpp"

#include <cmath>

namespace blockwright {
const Curve& stroke_of(const Opened& open, StrokeSpot spot) {
  return open.edges[index_of(spot.edge)].stretches[spot.stretch].curves()[spot.stroke];
}

double length_of(const Opened& open, StrokeSpot spot) { return length(stroke_of(open, spot)); }

Point corner_of(const Opened& open, Corner corner) {
  return open.edges[static_cast<std::size_t>(corner)].stretches.front().start();
}

Point across_of(const Opened& open) { return end_of(stroke_of(open, kLowerArmhole)); }

Vec up_the_side(const Opened& open) {
  return unit(corner_of(open, Corner::Underarm) - corner_of(open, Corner::SideWaist));
}

Vec shoulder_at_neck(const Opened& open) {
  return -end_tangent(open.edges[index_of(BlockEdge::Shoulder)].stretches.back());
}

Vec shoulder_at_tip(const Opened& open) {
  return -start_tangent(open.edges[index_of(BlockEdge::Shoulder)].stretches.front());
}

std::optional<DartSpot> waist_dart(const Opened& open) {
  if (open.edges[index_of(BlockEdge::Waist)].darts.empty()) return std::nullopt;
  return DartSpot{index_of(BlockEdge::Waist), 0};
}

std::vector<DartSpot> waist_darts(const Opened& open) {
  std::vector<DartSpot> spots;
  const std::size_t waist = index_of(BlockEdge::Waist);
  for (std::size_t d = 0; d < open.edges[waist].darts.size(); ++d) spots.push_back({waist, d});
  return spots;
}

double closed_length(const Opened& open, BlockEdge edge) {
  return closed_length(open.edges[index_of(edge)]);
}

double times_for(const std::function<Opened(double)>& turned, BlockEdge edge, double wanted) {
  constexpr double least = 0.4, most = 2.5, near = 1e-9;
  constexpr int passes = 40;
  const double before = closed_length(turned(0.0), edge);
  double times = 1.0;
  for (int pass = 0; pass < passes; ++pass) {
    const double got = closed_length(turned(times), edge) - before;
    if (std::abs(got - (wanted - before)) < near) break;
    const double better = times * (wanted - before) / got;
    if (!(better >= least && better <= most)) break;
    times = better;
  }
  return times;
}

double side_notch(const Opened& open) {
  for (const auto& notch : open.notches) {
    if (notch.edge == index_of(BlockEdge::Side)) return notch.along;
  }
  return 0.0;
}

double centre_at(const Opened& open, double y) {
  const Path& centre = open.edges[index_of(BlockEdge::Centre)].stretches.front();
  const auto hits = intersections(centre, Point{0.0, y}, Vec{1.0, 0.0});
  if (hits.empty()) return y > centre.start().y ? centre.start().x : centre.end().x;
  return hits.front().point.x;
}

}  // namespace blockwright
