#include "reach.hpp"

#include "blockwright/dart/pivot.hpp"
#include "blockwright/geometry/intersections.hpp"

#include <cmath>

namespace blockwright {
namespace {

constexpr double kTouch = 1e-6;     // mm: nearer than this to its end the way has arrived
constexpr double kSearchStep = 5.0;  // mm

bool meets(const Path& way, const Path& other) {
  for (const PathCrossing& hit : intersections(way, other)) {
    if (distance(hit.point, way.end()) > kTouch && distance(hit.point, way.start()) > kTouch) {
      return true;
    }
  }
  return false;
}

bool bars(const Dart& dart, const Path& way) {
  if (dart.legs[0] == dart.legs[1]) return false;
  if (distance(dart.apex, way.start()) < kTouch) {
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
                                        double wanted) {
  const double most = closed_length(open.edges[edge]) - kFromCorner;
  const auto reaches = [&](double along) {
    return along >= kFromCorner && along <= most && !is_mouth(open.edges[edge], along) &&
           !barrier(open, apex, spot_at(open, edge, along).point);
  };
  for (double off = 0.0; off <= most; off += kSearchStep) {
    if (reaches(wanted - off)) return wanted - off;
    if (reaches(wanted + off)) return wanted + off;
  }
  return std::nullopt;
}

}  // namespace blockwright
