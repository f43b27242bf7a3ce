#include "positive_union.hpp"

#include "blockwright/base/error.hpp"

#include <polyclipping/clipper.hpp>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// The library counts in whole numbers: a tenth of a micrometre each.
constexpr double kUnitsPerMm = 1e4;

ClipperLib::Path to_units(const std::vector<Point>& points) {
  ClipperLib::Path path;
  path.reserve(points.size());
  for (const Point p : points) {
    path.emplace_back(std::llround(p.x * kUnitsPerMm), std::llround(p.y * kUnitsPerMm));
  }
  return path;
}

Path to_path(const ClipperLib::Path& ring) {
  std::vector<Point> points;
  points.reserve(ring.size() + 1);
  for (const ClipperLib::IntPoint& p : ring) {
    points.push_back(
        {static_cast<double>(p.X) / kUnitsPerMm, static_cast<double>(p.Y) / kUnitsPerMm});
  }
  points.push_back(points.front());
  return Path::through(points);
}

}  // namespace

Path positive_union(const Path& closed, double tolerance) {
  ClipperLib::Clipper clipper;
  clipper.StrictlySimple(true);
  clipper.AddPath(to_units(flattened(closed, tolerance)), ClipperLib::ptSubject, true);
  ClipperLib::Paths rings;
  clipper.Execute(ClipperLib::ctUnion, rings, ClipperLib::pftPositive, ClipperLib::pftPositive);
  require(!rings.empty(), "an outline that encloses nothing");
  return to_path(*std::max_element(rings.begin(), rings.end(), [](const auto& a, const auto& b) {
    return ClipperLib::Area(a) < ClipperLib::Area(b);
  }));
}

}  // namespace blockwright
