#include "blockwright/layout/cut_line.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/offset.hpp"
#include "blockwright/geometry/path.hpp"
#include "geos_area.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

constexpr double kAllowance = 20.0;

std::vector<Path> edges_of(const Piece& piece) {
  std::vector<Path> edges;
  for (const Edge& edge : piece.edges) edges.push_back(edge.path);
  return edges;
}

std::vector<double> toile_widths(const Piece& piece) {
  std::vector<double> widths;
  for (const Edge& edge : piece.edges) {
    const bool sewn = edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening;
    widths.push_back(sewn ? kAllowance : 0.0);
  }
  return widths;
}

Path cut_in_mm(const std::vector<Path>& edges, const std::vector<double>& widths) {
  std::vector<Length> lengths;
  for (const double width : widths) lengths.push_back(Length::mm(width));
  return cut_line(edges, lengths);
}

Path toile_cut_line(const Piece& piece) { return cut_in_mm(edges_of(piece), toile_widths(piece)); }

std::vector<Path> sides_of(const std::vector<Point>& corners) {
  std::vector<Path> sides;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    sides.push_back(Path::through({corners[i], corners[(i + 1) % corners.size()]}));
  }
  return sides;
}

Path joined(const std::vector<Path>& edges) {
  Path outline;
  for (const Path& edge : edges) outline.add(edge);
  return outline;
}

// True if the point lies in the closed path or within `slack` mm of it.
bool covers(const Path& cut, Point p, double slack) {
  return contains(cut, p, 0.005) || nearest(cut, p).distance <= slack;
}

struct Outline {
  std::vector<Path> edges;
  std::vector<double> widths;
};

// A star-shaped outline of 5 to 12 edges, straight or bowed in or out, a third of them without
// allowance, the others with 3 to 40 mm: what a garment piece may look like at its worst.
Outline random_outline(Random& random) {
  const int count = random.whole(5, 12);
  std::vector<Point> corners;
  for (int i = 0; i < count; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + random.between(-0.3, 0.3)) / count;
    corners.push_back(Point{300.0, 300.0} +
                      random.between(90.0, 280.0) * direction(Angle::radians(angle)));
  }
  Outline outline;
  for (int i = 0; i < count; ++i) {
    const Point a = corners[static_cast<std::size_t>(i)];
    const Point b = corners[static_cast<std::size_t>((i + 1) % count)];
    const double bow = random.whole(0, 2) == 0 ? 0.0 : random.between(-0.15, 0.15);
    const Vec aside = bow * distance(a, b) * right_of(unit(b - a));
    const CubicCurve curve = {a, between(a, b, 0.3) + aside, between(a, b, 0.7) + aside, b};
    outline.edges.push_back(bow == 0.0 ? Path::through({a, b}) : Path({curve}));
    outline.widths.push_back(random.whole(0, 2) == 0 ? 0.0 : random.between(3.0, 40.0));
  }
  return outline;
}

// The largest turn to the left at any corner.
Angle sharpest_turn(const std::vector<Path>& edges) {
  Angle most;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Path& next = edges[(i + 1) % edges.size()];
    most = std::max(most, turn_between(end_tangent(edges[i]), start_tangent(next)));
  }
  return most;
}

// What no rule of corners may lose: the strip beside each edge, square to it.
double share_of_strip_covered(const Outline& outline, const Path& cut, std::size_t edge) {
  int covered = 0, asked = 0;
  const double whole = length(outline.edges[edge]);
  for (double share = 0.2; share < 0.85; share += 0.1) {
    const Point on = point_at_length(outline.edges[edge], share * whole);
    const Vec out = right_of(tangent_at_length(outline.edges[edge], share * whole));
    covered += covers(cut, on + (outline.widths[edge] - 0.05) * out, 0.0) ? 1 : 0;
    ++asked;
  }
  return static_cast<double>(covered) / asked;
}

}  // namespace

TEST_CASE("a square with allowance all round is the larger square") {
  const Path cut = cut_in_mm(sides_of({{0, 0}, {100, 0}, {100, 100}, {0, 100}}), {10, 10, 10, 10});
  CHECK(signed_area(cut) == Approx(120.0 * 120.0));
  CHECK(cut.curves().size() == 4);
}

TEST_CASE("without allowance the cut line is the stitch line, stroke for stroke") {
  const Piece front = sample_front();
  const Path cut = cut_in_mm(edges_of(front), std::vector<double>(front.edges.size(), 0.0));
  CHECK(cut == flat_outline(front));
}

TEST_CASE("a width for each edge: mitres where both have allowance") {
  const Path cut = cut_in_mm(sides_of({{0, 0}, {100, 0}, {100, 100}, {0, 100}}), {10, 20, 10, 5});
  CHECK(signed_area(cut) == Approx(125.0 * 120.0));
  CHECK(nearest(cut, {120, -10}).distance < 1e-9);
}

TEST_CASE("beside a bare edge the allowance ends in the edge's mirror image") {
  // The lower side has 20 mm; its neighbours lean 60 degrees inwards and 100 degrees outwards.
  const Point a = {0, 0}, b = {100, 0};
  const Vec from_a = direction(Angle::degrees(60.0)), from_b = direction(Angle::degrees(80.0));
  const Path cut =
      cut_in_mm(sides_of({a, b, b + 100.0 * from_b, a + 100.0 * from_a}), {20, 0, 0, 0});
  const auto below = intersections(cut, {0, -20}, {1, 0});
  REQUIRE(below.size() == 2);
  CHECK(std::min(below[0].point.x, below[1].point.x) ==
        Approx(20.0 / std::tan(Angle::degrees(60.0).radians())));
  CHECK(std::max(below[0].point.x, below[1].point.x) ==
        Approx(100.0 + 20.0 / std::tan(Angle::degrees(80.0).radians())));
}

TEST_CASE("a turned allowance lies on the bare edge, curved or straight") {
  // Turned in along the stitch line, the end of the shoulder's allowance must fall on the neckline.
  const Piece front = sample_front();
  const Path cut = toile_cut_line(front);
  const Path& neckline = front.edge("neckline").path;
  const Point corner = front.landmark("side_neck_point");
  const Vec seam = end_tangent(front.edge("shoulder").path);
  int tried = 0;
  for (const Curve& curve : each(cut.curves())) {
    const Vec v = point_at(curve, 0.5) - corner;
    if (norm(v) > 20.0 || dot(v, right_of(seam)) < 1.0) continue;
    const Point turned = corner + (2.0 * dot(v, seam) * seam - v);
    CHECK(nearest(neckline, turned).distance < 1e-6);
    ++tried;
  }
  CHECK(tried == 1);
}

TEST_CASE("sharp corners end square instead of reaching far") {
  const Point a = {0, 0}, b = {200, 0};
  const Vec sharp = direction(Angle::degrees(20.0));
  for (const double second : each({0.0, 15.0})) {
    const Path cut = cut_in_mm(sides_of({a, b, a + 150.0 * sharp}), {15, second, second});
    for (const Point p : flattened(cut, 0.1)) {
      CHECK(nearest(joined(sides_of({a, b, a + 150.0 * sharp})), p).distance <= 30.0 + 1e-9);
    }
  }
}

TEST_CASE("the sample pieces' allowance is right to 0.1 mm away from the corners") {
  for (const Piece& piece : sample_pattern().pieces) {
    const Path cut = toile_cut_line(piece);
    for (const Edge& edge : piece.edges) {
      const double expected =
          edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening ? kAllowance : 0.0;
      const double whole = length(edge.path);
      for (double s = 45.0; s < whole - 45.0; s += 1.0) {
        const Point on = point_at_length(edge.path, s);
        // The peak of a dart has corners of its own: a mitre there is farther off.
        const bool at_dart =
            std::any_of(piece.darts.begin(), piece.darts.end(), [&](const Dart& dart) {
              return dart.edge == edge.name && distance(on, dart.peak) < dart.intake() + 10.0;
            });
        INFO(piece.name << "." << edge.name << " at " << s);
        if (!at_dart) CHECK(nearest(cut, on).distance == Approx(expected).margin(0.02));
      }
    }
  }
}

TEST_CASE("hem, free and fold edges lie on the cut line") {
  for (const Piece& piece : each(sample_pattern().pieces)) {
    const Path cut = toile_cut_line(piece);
    for (const Edge& edge : piece.edges) {
      if (edge.role == EdgeRole::Seam || edge.role == EdgeRole::Opening) continue;
      for (const Point p : flattened(edge.path, 0.5)) CHECK(nearest(cut, p).distance < 1e-6);
    }
  }
}

TEST_CASE("a dart's mouth keeps its peak on the cut line") {
  const Piece front = sample_front();
  const Dart& dart = front.dart("shoulder");
  const Path cut = toile_cut_line(front);
  // Outside both halves of the peak the cut line runs parallel; the two meet in a point beyond it.
  const Vec out = unit(dart.peak - dart.apex);
  const auto beyond = intersections(cut, dart.peak, out);
  double tip = 0.0;
  for (const LineCrossing& hit : beyond) tip = std::max(tip, hit.along_line);
  CHECK(tip > kAllowance);
  CHECK(tip < 1.2 * kAllowance);
}

TEST_CASE("the sample pieces' cut lines are simple, anticlockwise, and of curves") {
  for (const Piece& piece : each(sample_pattern().pieces)) {
    const Path cut = toile_cut_line(piece);
    CHECK(signed_area(cut) > signed_area(flat_outline(piece)));
    CHECK(!find_crossing(cut, 0.01));
    CHECK(distance(cut.start(), cut.end()) < 1e-9);
    CHECK(cut.curves().size() < 60);  // fitted cubics, not a polygon
  }
}

TEST_CASE("the sample pieces take any allowance in use, and more") {
  // 0.6 to 2.5 cm is common practice; 60 mm is beyond what the dart's mouth can follow.
  for (const Piece& piece : sample_pattern().pieces) {
    double before = signed_area(flat_outline(piece));
    for (const double allowance : {6.0, 10.0, 15.0, 25.0, 40.0, 60.0}) {
      std::vector<double> widths = toile_widths(piece);
      for (double& width : widths) width *= allowance / kAllowance;
      const Path cut = cut_in_mm(edges_of(piece), widths);
      INFO(piece.name << " " << allowance);
      CHECK(!find_crossing(cut, 0.01));
      CHECK(is_simple_ring(cut));
      CHECK(signed_area(cut) > before);
      before = signed_area(cut);
      for (const Point p : flattened(flat_outline(piece), 0.5)) CHECK(covers(cut, p, 0.02));
    }
  }
}

TEST_CASE("uniform allowance agrees in area with an independent buffer") {
  // GEOS buffers the flattened outline with mitres of the same limit; it takes the mitre from the
  // last chord where ours takes it from the tangent, hence a tolerance of a few mm2 on about 1e5.
  int tried = 0;
  for (Random& random : each_random(120, 31)) {
    Outline outline = random_outline(random);
    const double width = random.between(5.0, 15.0);
    std::fill(outline.widths.begin(), outline.widths.end(), width);
    // Corners beyond the mitre limit are bevelled at different places.
    if (sharpest_turn(outline.edges).degrees() > 115.0) continue;
    ++tried;
    const Path cut = cut_in_mm(outline.edges, outline.widths);
    CHECK(signed_area(cut) == Approx(buffered_area(joined(outline.edges), width)).margin(8.0));
  }
  CHECK(tried > 30);
}

TEST_CASE("whatever the outline: covered, simple, and the allowance is there") {
  double strips = 0.0, covered = 0.0;
  for (Random& random : each_random(300, 32)) {
    const Outline outline = random_outline(random);
    const Path base = joined(outline.edges);
    if (find_crossing(base, 0.05)) continue;
    const Path cut = cut_in_mm(outline.edges, outline.widths);
    CHECK(signed_area(cut) >= signed_area(base) - 1e-6);
    CHECK(!find_crossing(cut, 0.01));
    CHECK(is_simple_ring(cut));
    for (const Point p : flattened(base, 0.5)) CHECK(covers(cut, p, 0.02));
    for (std::size_t k = 0; k < outline.edges.size(); ++k) {
      if (outline.widths[k] == 0.0) continue;
      strips += 1.0;
      covered += share_of_strip_covered(outline, cut, k);
    }
  }
  CHECK(strips > 1000.0);
  // Mirrored ends may cut into the strip of a short edge; elsewhere it is whole.
  CHECK(covered / strips > 0.985);
}
