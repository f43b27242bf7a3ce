#include "reach.hpp"

#include "blockwright/dart/pivot.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "words.hpp"

#include <cmath>

namespace blockwright {
namespace {

constexpr double kArrived = 1e-6;  // mm: nearer than this to its end the way has arrived

bool meets(const Path& way, const Path& other) {
  for (const PathCrossing& hit : intersections(way, other)) {
    if (distance(hit.point, way.end()) > kArrived && distance(hit.point, way.start()) > kArrived) {
      return true;
    }
  }
  return false;
}

bool bars(const Dart& dart, const Path& way) {
  if (dart.legs[0] == dart.legs[1]) return false;
  if (distance(dart.apex, way.start()) < kArrived) {
    return meets(way, Path::through({dart.legs[0], dart.legs[1]}));
  }
  return meets(way, Path::through({dart.legs[0], dart.apex, dart.legs[1], dart.legs[0]}));
}

bool is_mouth(const OpenEdge& edge, double along) {
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    if (std::abs(closed_along(edge, d + 1, 0.0) - along) < kFromCorner) return true;
  }
  return false;
}

}  // namespace

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

std::optional<double> nearest_reachable(const Opened& open, Point apex, std::size_t edge,
                                        const DartPosition& position, double wanted) {
  const double whole = closed_length(open.edges[edge]);
  const auto reaches = [&](double fraction) {
    const double along = from_trade_end(position, whole, fraction * whole);
    return along >= kFromCorner && along <= whole - kFromCorner &&
           !is_mouth(open.edges[edge], along) &&
           !barrier(open, apex, spot_at(open, edge, along).point);
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
