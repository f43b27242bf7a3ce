#include "geos_area.hpp"

#include <geos_c.h>

#include <memory>
#include <vector>

namespace blockwright_tests {
namespace {

using namespace blockwright;

struct Context {
  GEOSContextHandle_t handle = GEOS_init_r();
  Context() = default;
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;
  ~Context() { GEOS_finish_r(handle); }
};

auto polygon(const Context& geos, const Path& closed, double tolerance) {
  auto points = flattened(closed, tolerance);
  points.push_back(points.front());
  auto* line = GEOSCoordSeq_create_r(geos.handle, static_cast<unsigned>(points.size()), 2);
  for (unsigned i = 0; i < points.size(); ++i) {
    GEOSCoordSeq_setXY_r(geos.handle, line, i, points[i].x, points[i].y);
  }
  auto* ring = GEOSGeom_createLinearRing_r(geos.handle, line);
  return GEOSGeom_createPolygon_r(geos.handle, ring, nullptr, 0);
}

}  // namespace

double buffered_area(const Path& closed, double width) {
  const Context geos;
  auto* shape = polygon(geos, closed, 0.002);
  auto* grown = GEOSBufferWithStyle_r(geos.handle, shape, width, 16, GEOSBUF_CAP_FLAT,
                                      GEOSBUF_JOIN_MITRE, 2.0);
  double area = 0.0;
  GEOSArea_r(geos.handle, grown, &area);
  GEOSGeom_destroy_r(geos.handle, grown);
  GEOSGeom_destroy_r(geos.handle, shape);
  return area;
}

bool is_simple_ring(const Path& closed) {
  const Context geos;
  auto* shape = polygon(geos, closed, 0.01);
  const bool valid = GEOSisValid_r(geos.handle, shape) == 1;
  GEOSGeom_destroy_r(geos.handle, shape);
  return valid;
}

}  // namespace blockwright_tests
