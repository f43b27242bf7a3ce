// Our geometry against GEOS, the geometry engine of the open GIS world, on the same flattened
// outlines: areas, lengths, distances, inside or outside, and whether an outline crosses itself.

#include "blockwright/geometry/path.hpp"
#include "support/each.hpp"
#include "support/random_shapes.hpp"

#include <catch2/catch.hpp>
#include <geos_c.h>

#include <memory>
#include <vector>

using namespace blockwright;

namespace {

struct Deleter {
  GEOSContextHandle_t context;
  void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(context, geometry); }
};
using Geometry = std::unique_ptr<GEOSGeometry, Deleter>;

// One GEOS session; every answer is checked to be an answer.
class Geos {
 public:
  Geos() : context_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(context_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  Geometry point(Point p) const { return hold(GEOSGeom_createPointFromXY_r(context_, p.x, p.y)); }
  Geometry line(const std::vector<Point>& points) const {
    return hold(GEOSGeom_createLineString_r(context_, sequence(points)));
  }
  Geometry polygon(const std::vector<Point>& closed) const {
    GEOSGeometry* ring = GEOSGeom_createLinearRing_r(context_, sequence(closed));
    REQUIRE(ring != nullptr);
    return hold(GEOSGeom_createPolygon_r(context_, ring, nullptr, 0));
  }
  double area(const Geometry& geometry) const {
    double value = 0.0;
    REQUIRE(GEOSArea_r(context_, geometry.get(), &value) == 1);
    return value;
  }
  double length(const Geometry& geometry) const {
    double value = 0.0;
    REQUIRE(GEOSLength_r(context_, geometry.get(), &value) == 1);
    return value;
  }
  double distance(const Geometry& a, const Geometry& b) const {
    double value = 0.0;
    REQUIRE(GEOSDistance_r(context_, a.get(), b.get(), &value) == 1);
    return value;
  }
  bool is_simple(const Geometry& geometry) const {
    return answer(GEOSisSimple_r(context_, geometry.get()));
  }
  bool contains(const Geometry& polygon, const Geometry& point) const {
    return answer(GEOSContains_r(context_, polygon.get(), point.get()));
  }

 private:
  Geometry hold(GEOSGeometry* geometry) const {
    REQUIRE(geometry != nullptr);
    return {geometry, Deleter{context_}};
  }
  static bool answer(char code) {
    REQUIRE((code == 0 || code == 1));
    return code == 1;
  }
  GEOSCoordSequence* sequence(const std::vector<Point>& points) const {
    GEOSCoordSequence* coordinates =
        GEOSCoordSeq_create_r(context_, static_cast<unsigned>(points.size()), 2);
    for (unsigned i = 0; i < points.size(); ++i) {
      REQUIRE(GEOSCoordSeq_setXY_r(context_, coordinates, i, points[i].x, points[i].y) == 1);
    }
    return coordinates;
  }

  GEOSContextHandle_t context_;
};

// A closed outline of fair curves and straight strokes through random corners round a middle: most
// keep to themselves, some bulge across.
Path random_outline(Random& random) {
  const int corners = random.whole(3, 7);
  std::vector<Point> at;
  for (int i = 0; i < corners; ++i) {
    const Angle angle = Angle::degrees(360.0 * (i + random.between(0.0, 0.8)) / corners);
    at.push_back(Point{300.0, 300.0} + random.between(60.0, 300.0) * direction(angle));
  }
  Path outline;
  for (int i = 0; i < corners; ++i) {
    const Point from = at[static_cast<std::size_t>(i)];
    const Point to = at[static_cast<std::size_t>((i + 1) % corners)];
    if (random.whole(0, 2) == 0) {
      outline.add(Segment{from, to});
      continue;
    }
    const Vec leaving = rotated(to - from, Angle::degrees(random.between(-75.0, 75.0)));
    const Vec arriving = rotated(to - from, Angle::degrees(random.between(-75.0, 75.0)));
    outline.add(fair_curve(from, leaving, to, arriving));
  }
  return outline;
}

// Corners on the lines of squared paper, where touches and overlaps are exact; no two in a row are
// the same.
std::vector<Point> random_squared_outline(Random& random) {
  std::vector<Point> corners;
  const int count = random.whole(3, 7);
  while (static_cast<int>(corners.size()) < count) {
    const Point p = {1.0 * random.whole(0, 6), 1.0 * random.whole(0, 6)};
    if (!corners.empty() && p == corners.back()) continue;
    corners.push_back(p);
  }
  while (corners.back() == corners.front()) corners.pop_back();
  corners.push_back(corners.front());
  return corners;
}

}  // namespace

TEST_CASE("areas are those of GEOS") {
  const Geos geos;
  int tested = 0;
  for (Random& random : each_random(500, 1)) {
    const Path outline = random_outline(random);
    if (find_crossing(outline, 0.05)) continue;  // areas of crossed outlines mean different things
    const std::vector<Point> corners = flattened(outline, 0.001);
    const double area = geos.area(geos.polygon(corners));
    REQUIRE(signed_area(Path::through(corners)) == Approx(area).epsilon(1e-12));
    // Between a curve and its chords lies at most the tolerance times the length.
    REQUIRE(signed_area(outline) == Approx(area).margin(0.001 * length(outline)).epsilon(0));
    ++tested;
  }
  CHECK(tested > 200);
}

TEST_CASE("lengths are those of GEOS") {
  const Geos geos;
  for (Random& random : each_random(200, 2)) {
    const Path path = random_path(random, 4);
    const double chords = geos.length(geos.line(flattened(path, 1e-5)));
    REQUIRE(length(path) >= chords - 1e-9);
    REQUIRE(length(path) < chords + 1e-3);
  }
}

TEST_CASE("distances to a path are those of GEOS") {
  const Geos geos;
  for (Random& random : each_random(200, 3)) {
    const Path path = random_path(random, 4);
    const Geometry line = geos.line(flattened(path, 1e-4));
    for (int k = 0; k < 5; ++k) {
      const Point p = random_point(random, 500.0);
      REQUIRE(nearest(path, p).distance ==
              Approx(geos.distance(line, geos.point(p))).margin(1e-4).epsilon(0));
    }
  }
}

TEST_CASE("points are inside an outline for us as for GEOS") {
  const Geos geos;
  int inside = 0, outside = 0;
  for (Random& random : each_random(300, 4)) {
    const Path outline = random_outline(random);
    if (find_crossing(outline, 0.01)) continue;
    const Geometry polygon = geos.polygon(flattened(outline, 0.01));
    for (int k = 0; k < 20; ++k) {
      const Point p = random_point(random, 600.0);
      const bool expected = geos.contains(polygon, geos.point(p));
      REQUIRE(contains(outline, p, 0.01) == expected);
      ++(expected ? inside : outside);
    }
  }
  CHECK(inside > 500);
  CHECK(outside > 500);
}

TEST_CASE("curved outlines cross themselves for us as for GEOS") {
  const Geos geos;
  int simple = 0, crossing = 0;
  for (Random& random : each_random(3000, 5)) {
    const Path outline = random_outline(random);
    const bool expected = geos.is_simple(geos.line(flattened(outline, 0.05)));
    REQUIRE(find_crossing(outline, 0.05).has_value() == !expected);
    ++(expected ? simple : crossing);
  }
  CHECK(simple > 500);
  CHECK(crossing > 500);
}

TEST_CASE("straight outlines through random corners cross themselves for us as for GEOS") {
  const Geos geos;
  int simple = 0, crossing = 0;
  for (Random& random : each_random(5000, 6)) {
    std::vector<Point> corners;
    const int count = random.whole(3, 8);
    for (int k = 0; k < count; ++k) corners.push_back(random_point(random, 500.0));
    corners.push_back(corners.front());
    const bool expected = geos.is_simple(geos.line(corners));
    REQUIRE(find_crossing(Path::through(corners), 0.05).has_value() == !expected);
    ++(expected ? simple : crossing);
  }
  CHECK(simple > 500);
  CHECK(crossing > 500);
}

TEST_CASE("outlines on squared paper touch and overlap themselves for us as for GEOS") {
  const Geos geos;
  int simple = 0, crossing = 0;
  for (Random& random : each_random(5000, 7)) {
    const std::vector<Point> corners = random_squared_outline(random);
    if (corners.size() < 4) continue;
    const bool expected = geos.is_simple(geos.line(corners));
    REQUIRE(find_crossing(Path::through(corners), 0.05).has_value() == !expected);
    ++(expected ? simple : crossing);
  }
  CHECK(simple > 500);
  CHECK(crossing > 500);
}

TEST_CASE("a crossing that is reported lies on the outline twice") {
  int tested = 0;
  for (Random& random : each_random(500, 8)) {
    const Path outline = random_outline(random);
    const std::vector<Point> chain = flattened(outline, 0.05);
    const auto crossing = find_crossing(outline, 0.05);
    if (!crossing) continue;
    ++tested;
    int chords_there = 0;
    for (std::size_t k = 1; k < chain.size(); ++k) {
      const Path chord = Path::through({chain[k - 1], chain[k]});
      chords_there += nearest(chord, *crossing).distance < 1e-9 ? 1 : 0;
    }
    REQUIRE(chords_there >= 2);
  }
  CHECK(tested > 50);
}
