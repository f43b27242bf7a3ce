#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kArrived = 1e-6;  // mm: nearer than this to its end the way has arrived

bool bars(const Dart& dart, const Path& way) {
  if (dart.legs[0] == dart.legs[1]) return false;
  if (distance(dart.apex, way.start()) < kArrived) {
    return meets(way, Path::through({dart.legs[0], dart.legs[1]}));
  }
  return meets(way, Path::through({dart.legs[0], dart.apex, dart.legs[1], dart.legs[0]}));
}

bool is_mouth(const OpenEdge& edge, double along) {
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    if (std::abs(mouth_along(edge, d) - along) < kFromCorner) return true;
  }
  return false;
}

}  // namespace

bool meets(const Path& way, const Path& other) {
  return std::ranges::any_of(intersections(way, other), [&](const PathCrossing& hit) {
    return distance(hit.point, way.end()) > kArrived && distance(hit.point, way.start()) > kArrived;
  });
}

std::optional<std::string> barrier(const Opened& open, Point apex, Point to) {
  const Path way = Path::through({apex, to});
  for (const OpenEdge& edge : open.edges) {
    for (const Dart& dart : edge.darts) {
      if (bars(dart, way)) return "the dart " + open.piece.name + "." + dart.name;
    }
    for (const Path& stretch : edge.stretches) {
      if (!stretch.empty() && meets(way, stretch)) return "the outline at the " + edge.name;
    }
  }
  return std::nullopt;
}

std::optional<double> nearest_reachable(const Opened& open, Point apex, const Aim& aim,
                                        double wanted) {
  const OpenEdge& edge = open.edges[aim.edge];
  const double whole = closed_length(edge);
  const auto reaches = [&](double fraction) {
    const double along = from_trade_end(*aim.position, whole, fraction * whole);
    return is_off_corners(edge, along) && !is_mouth(edge, along) &&
           !barrier(open, apex, point_at(open, anchor_at(open, aim.edge, along)));
  };
  std::optional<double> best;
  for (int hundredths = 0; hundredths <= 100; ++hundredths) {
    const double fraction = hundredths / 100.0;
    const bool nearer = !best || std::abs(fraction - wanted) < std::abs(*best - wanted);
    if (nearer && reaches(fraction)) best = fraction;
  }
  return best;
}

}  // namespace blockwright
