#include "parts.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/block/waist_edge.hpp"
#include "blockwright/geometry/intersections.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Less of a side above its joint, in mm, is no part of its own. Ours.
constexpr double kLeastAboveJoint = 3.0;

const OpenEdge& edge_of(const Opened& open, BlockEdge edge) { return open.edges[index_of(edge)]; }

}  // namespace

const Curve& stroke_of(const Opened& open, StrokeSpot spot) {
  return edge_of(open, spot.edge).stretches[spot.stretch].curves()[spot.stroke];
}

Point middle_of(const Curve& stroke) {
  return point_at(stroke, parameter_at_length(stroke, 0.5 * length(stroke)));
}

Point corner_of(const Opened& open, Corner corner) {
  return open.edges[static_cast<std::size_t>(corner)].stretches.front().start();
}

Point across_of(const Opened& open) { return end_of(stroke_of(open, kLowerArmhole)); }

Point closed_across_of(const Opened& open) {
  const Dart& dart = open.at(shoulder_dart(open));
  return rotated_about(across_of(open), dart.apex, dart.angle());
}

Vec up_the_side(const Opened& open) {
  return start_tangent(edge_of(open, BlockEdge::Side).stretches.front());
}

Point side_joint(const Opened& open) {
  return end_of(edge_of(open, BlockEdge::Side).stretches.front().curves().front());
}

Vec up_to_the_underarm(const Opened& open) {
  return end_tangent(edge_of(open, BlockEdge::Side).stretches.back());
}

Vec shoulder_at_neck(const Opened& open) {
  return -end_tangent(edge_of(open, BlockEdge::Shoulder).stretches.back());
}

Vec shoulder_at_tip(const Opened& open) {
  return -start_tangent(edge_of(open, BlockEdge::Shoulder).stretches.front());
}

Opened with_side_to_lower(const Opened& open, double by) {
  const Path& side = edge_of(open, BlockEdge::Side).stretches.front();
  const double above = length(side.curves().back());
  if (side.curves().size() == 1 || by < above - kLeastAboveJoint) return open;
  Opened straight = open;
  straight.edges[index_of(BlockEdge::Side)].stretches = {Path({Segment{side.start(), side.end()}})};
  Redrawing work(straight);
  work.put(work.corner(Corner::Underarm), side.start() + length(side) * up_the_side(open));
  work.turn_start(kLowerArmhole, turn_between(up_to_the_underarm(open), up_the_side(open)));
  work.lengthen_armhole(0.0);
  return work.finished();
}

DartSpot shoulder_dart(const Opened& open) {
  require(!edge_of(open, BlockEdge::Shoulder).darts.empty(),
          "the block has a shoulder dart on each piece");
  return {index_of(BlockEdge::Shoulder), 0};
}

Point apex_of(const Opened& open) { return open.at(shoulder_dart(open)).apex; }

std::optional<DartSpot> waist_dart(const Opened& open) {
  if (edge_of(open, BlockEdge::Waist).darts.empty()) return std::nullopt;
  return DartSpot{index_of(BlockEdge::Waist), 0};
}

std::vector<DartSpot> waist_darts(const Opened& open) {
  std::vector<DartSpot> spots;
  const std::size_t waist = index_of(BlockEdge::Waist);
  for (std::size_t d = 0; d < open.edges[waist].darts.size(); ++d) spots.push_back({waist, d});
  return spots;
}

double closed_length(const Opened& open, BlockEdge edge) {
  return closed_length(edge_of(open, edge));
}

Opened with_wedge_closed(const Opened& open, const Wedge& wedge,
                         const std::function<void(Redrawing&, Angle)>& close) {
  constexpr double least = 0.4, most = 2.5, near = 1e-9;
  constexpr int passes = 40;
  const Angle straight = wedge_angle(wedge.by, distance(wedge.apex, wedge.fold));
  const auto closed = [&](double times) {
    Redrawing work(open);
    close(work, times * straight);
    return work.finished();
  };
  const double before = closed_length(closed(0.0), wedge.edge);
  const double wanted = closed_length(open, wedge.edge) - wedge.by;
  double times = 1.0;
  for (int pass = 0; pass < passes; ++pass) {
    const double got = closed_length(closed(times), wedge.edge) - before;
    if (std::abs(got - (wanted - before)) < near) break;
    const double better = times * (wanted - before) / got;
    if (!(better >= least && better <= most)) break;
    times = better;
  }
  return closed(times);
}

Opened with_dart_widened(const Opened& open, DartSpot dart, double by) {
  Redrawing work(open);
  set_mouth(work, dart, open.at(dart).intake() + by);
  return work.finished();
}

double side_notch(const Opened& open) {
  for (const auto& notch : open.notches) {
    if (notch.edge == index_of(BlockEdge::Side)) return notch.along;
  }
  return 0.0;
}

Point side_notch_point(const Opened& open) {
  return point_at_length(edge_of(open, BlockEdge::Side).stretches.front(), side_notch(open));
}

double bust_line_at(const Opened& open, double x) {
  const Point notch = side_notch_point(open), bust = apex_of(open);
  if (!is_a(open.piece, kBodiceFront) || notch.x <= bust.x) return notch.y;
  const double way = std::clamp((x - bust.x) / (notch.x - bust.x), 0.0, 1.0);
  return bust.y + way * (notch.y - bust.y);
}

double bust_line_width(const Opened& open) {
  const Point notch = side_notch_point(open);
  double width = notch.x - centre_at(open, bust_line_at(open, centre_at(open, notch.y)));
  for (const DartSpot spot : waist_darts(open)) {
    const Dart& dart = open.at(spot);
    width -= taken_at_level(dart, bust_line_at(open, dart.apex.x));
  }
  return width;
}

double centre_at(const Opened& open, double y) {
  const Path& centre = edge_of(open, BlockEdge::Centre).stretches.front();
  const auto hits = intersections(centre, Point{0.0, y}, Vec{1.0, 0.0});
  if (hits.empty()) return y > centre.start().y ? centre.start().x : centre.end().x;
  return hits.front().point.x;
}

}  // namespace blockwright
