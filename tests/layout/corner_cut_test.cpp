// Ends of allowances at the corners of a garment's pieces.
#include "allowances.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"
#include "blockwright/layout/cut_line.hpp"
#include "layout/geos_area.hpp"
#include "support/each.hpp"
#include "support/random.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

Path outline_of(const std::vector<CutEdge>& edges) {
  Path outline;
  for (const CutEdge& cut : edges) outline.add(cut.edge);
  return outline;
}

// The edges of a polygon, all with a mitre to begin with.
std::vector<CutEdge> polygon(const std::vector<Point>& corners, const std::vector<double>& widths) {
  std::vector<CutEdge> edges;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    edges.push_back(
        {Path::through({corners[i], corners[(i + 1) % corners.size()]}), Length::mm(widths[i])});
  }
  return edges;
}

// All but the fold's, which lies on a straight line.
constexpr CornerCut kAnyCorner[] = {CornerCut::Mitre,       CornerCut::TurnsBefore,
                                    CornerCut::TurnsAfter,  CornerCut::SquareBefore,
                                    CornerCut::SquareAfter, CornerCut::MirrorsBefore,
                                    CornerCut::MirrorsAfter};

// A star-shaped outline of 5 to 9 edges, straight or a little bowed, a third of them bare, with any
// kind of corner.
std::vector<CutEdge> any_edges(Random& random) {
  const int count = random.whole(5, 9);
  std::vector<Point> corners;
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + random.between(-0.3, 0.3)) / count;
    corners.push_back(Point{300.0, 300.0} +
                      random.between(140.0, 280.0) * direction(Angle::radians(angle)));
  }
  std::vector<CutEdge> edges;
  for (int i = 0; i < count; ++i) {
    const Point a = corners[static_cast<std::size_t>(i)];
    const Point b = corners[static_cast<std::size_t>((i + 1) % count)];
    const double bow = random.whole(0, 1) == 0 ? 0.0 : random.between(-0.1, 0.1);
    const Vec aside = bow * distance(a, b) * right_of(unit(b - a));
    const CubicCurve curve = {a, between(a, b, 0.3) + aside, between(a, b, 0.7) + aside, b};
    const double width = random.whole(0, 2) == 0 ? 0.0 : random.between(5.0, 25.0);
    edges.push_back({bow == 0.0 ? Path::through({a, b}) : Path({curve}), Length::mm(width),
                     kAnyCorner[random.whole(0, 4)]});
  }
  return edges;
}

// An allowance that is folded back at a corner: its stitch line there, from the corner on along its
// own edge, and what it lies on.
struct FoldedEnd {
  Point corner;
  Vec along, outward;
  double width;
};

bool lies_in(const Path& cut, Point p, double slack) {
  return contains(cut, p, 0.005) || nearest(cut, p).distance <= slack;
}

double most_outside(const Path& cut, const FoldedEnd& end) {
  double most = 0.0;
  for (const Point p : flattened(cut, 0.02)) {
    const Vec v = p - end.corner;
    const double out = dot(v, end.outward);
    if (out < 0.2 || out > end.width + 0.1 || norm(v) > 60.0) continue;
    const Point folded = p - 2.0 * out * end.outward;
    if (!contains(cut, folded, 0.005)) most = std::max(most, nearest(cut, folded).distance);
  }
  return most;
}

// The corner behind the i-th edge, if its rule folds an allowance back there and can be followed
// within the limits: an outer corner of 50 to 110 degrees.
std::optional<FoldedEnd> folded_end(const std::vector<CutEdge>& edges, std::size_t i) {
  const CutEdge &before = edges[i], &after = edges[(i + 1) % edges.size()];
  const bool first = before.at_end == CornerCut::TurnsBefore;
  if (!first && before.at_end != CornerCut::TurnsAfter) return std::nullopt;
  const CutEdge& ruled = first ? before : after;
  const double turn = turn_between(end_tangent(before.edge), start_tangent(after.edge)).degrees();
  if (turn < 70.0 || turn > 130.0 || ruled.width == Length()) return std::nullopt;
  const Vec along = first ? -end_tangent(before.edge) : start_tangent(after.edge);
  return FoldedEnd{before.edge.end(), along, first ? left_of(along) : right_of(along),
                   ruled.width.mm()};
}

EdgeFinish finished(Finish how) { return {how, 10.0}; }

}  // namespace

TEST_CASE("A hem's allowance ends as the mirror image of the side's cut line") {
  // The side leans 10 degrees outwards from the hem up: the interior angle is 100 degrees.
  const double lean = std::tan(Angle::degrees(10.0).radians());
  std::vector<CutEdge> edges =
      polygon({{0, 0}, {200, 0}, {200 + 300 * lean, 300}, {0, 300}}, {25, 15, 0, 0});
  edges[0].at_end = CornerCut::TurnsBefore;
  const Path cut = cut_line(edges);
  // The side's cut line crosses the hem's fold line 15 / cos 10 beyond the corner, and runs on from
  // there leaning outwards downwards as it does upwards.
  const double beyond = 15.0 / std::cos(Angle::degrees(10.0).radians());
  CHECK(nearest(cut, {200.0 + beyond, 0.0}).distance < 1e-6);
  CHECK(nearest(cut, {200.0 + beyond + 25.0 * lean, -25.0}).distance < 1e-6);
  CHECK(nearest(cut, {200.0 + beyond + 300.0 * lean - 1.0 * lean, 299.0}).distance < 0.01);
  CHECK(!find_crossing(cut, 0.01));
}

TEST_CASE("The allowance of a panel seam ends square where the other's cut line crosses it") {
  // A seam that runs up to a shoulder at 70 degrees.
  const Vec up = direction(Angle::degrees(70.0));
  const Point top = Point{200, 0} + 300.0 * up;
  std::vector<CutEdge> edges = polygon({{0, 0}, {200, 0}, top, {0, top.y}}, {0, 12, 15, 0});
  edges[1].at_end = CornerCut::SquareBefore;
  const Path cut = cut_line(edges);
  const Point crossed = top + (15.0 / up.y) * up;
  CHECK(nearest(cut, crossed).distance < 1e-6);
  CHECK(nearest(cut, crossed + 12.0 * right_of(up)).distance < 1e-6);
  CHECK(nearest(cut, crossed + 6.0 * right_of(up)).distance < 1e-6);
}

TEST_CASE("An allowance at the fold ends at the fold line, however the edge meets it") {
  // A V neck on the fold, as far off it as 55 degrees, and a deep one of 20.
  for (const double degrees : each({55.0, 90.0, 20.0})) {
    const Vec neck = direction(Angle::degrees(90.0 - degrees));
    const Point point = {0, 200}, shoulder = point + 120.0 * neck;
    std::vector<CutEdge> edges =
        polygon({{0, 0}, {shoulder.x, 0}, shoulder, point}, {20, 15, 10, 0});
    edges[2].at_end = edges[3].at_end = CornerCut::OnFold;
    const Path cut = cut_line(edges);
    for (const Point p : flattened(cut, 0.1)) CHECK(p.x > -1e-6);
    const double top = 200.0 + 10.0 / std::sin(Angle::degrees(degrees).radians());
    CHECK(nearest(cut, {0.0, top}).distance < 1e-6);
  }
}

TEST_CASE("Whatever the widths and corners: closed, simple, all round, at the allowance") {
  int measured = 0;
  for (Random& random : each_random(3000, 77)) {
    const std::vector<CutEdge> edges = any_edges(random);
    const Path base = outline_of(edges);
    if (find_crossing(base, 0.05)) continue;
    const Path cut = cut_line(edges);
    CHECK(distance(cut.start(), cut.end()) < 1e-9);
    CHECK(!find_crossing(cut, 0.01));
    CHECK(is_simple_ring(cut));
    for (const Point p : flattened(base, 2.0)) CHECK(lies_in(cut, p, 0.02));
    for (const CutEdge& one : edges) {
      const double whole = length(one.edge);
      if (whole < 140.0) continue;
      const Point middle = point_at_length(one.edge, 0.5 * whole);
      CHECK(nearest(cut, middle).distance == Approx(one.width.mm()).margin(0.1));
      ++measured;
    }
  }
  CHECK(measured > 5000);
}

TEST_CASE("Folded back along its stitch line nothing of a turned allowance sticks out") {
  int folded = 0;
  for (Random& random : each_random(3000, 78)) {
    const std::vector<CutEdge> edges = any_edges(random);
    if (find_crossing(outline_of(edges), 0.05)) continue;
    const Path cut = cut_line(edges);
    for (std::size_t i = 0; i < edges.size(); ++i) {
      const auto end = folded_end(edges, i);
      if (!end) continue;
      INFO("corner " << i);
      CHECK(most_outside(cut, *end) < 0.1);
      ++folded;
    }
  }
  CHECK(folded > 1000);
}

TEST_CASE("What is sewn last gives way to nothing: corners follow from how edges are finished") {
  using enum Finish;
  const auto corner = [](Finish before, Finish after) {
    return corner_between(finished(before), finished(after));
  };
  CHECK(corner(Turned, Seam) == CornerCut::TurnsBefore);
  CHECK(corner(Seam, Turned) == CornerCut::TurnsAfter);
  CHECK(corner(PanelSeam, Turned) == CornerCut::TurnsAfter);
  CHECK(corner(Seam, Enclosed) == CornerCut::TurnsBefore);
  CHECK(corner(Enclosed, Seam) == CornerCut::TurnsAfter);
  CHECK(corner(Seam, Bound) == CornerCut::TurnsBefore);
  CHECK(corner(PanelSeam, Seam) == CornerCut::SquareBefore);
  CHECK(corner(Enclosed, PanelSeam) == CornerCut::SquareAfter);
  CHECK(corner(Seam, Seam) == CornerCut::Mitre);
  for (const Finish other : {Seam, PanelSeam, Enclosed, Turned, Bound}) {
    CHECK(corner(FoldedBack, other) == CornerCut::MirrorsBefore);
    CHECK(corner(other, FoldedBack) == CornerCut::MirrorsAfter);
  }
  for (const Finish other : {Seam, PanelSeam, Enclosed, Turned}) {
    CHECK(corner(other, Fold) == CornerCut::OnFold);
    CHECK(corner(Fold, other) == CornerCut::OnFold);
  }
}
