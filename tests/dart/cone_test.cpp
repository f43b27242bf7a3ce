// The piece with all its darts closed, folded in space: an independent check of dart moves.
#include "blockwright/dart/pivot.hpp"
#include "blockwright/geometry/solve.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"
#include "support/people.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

using namespace blockwright;

namespace {

using InSpace = std::array<double, 3>;

double distance_in_space(const InSpace& a, const InSpace& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/// The piece about its apex, darts closed: a steep pyramid of narrow rigid triangles.
class Cone {
 public:
  explicit Cone(const Piece& piece) : piece_(piece), apex_(piece.darts.front().apex) {
    double taken = 0.0;
    for (const Dart& dart : piece.darts) {
      REQUIRE(distance(dart.apex, apex_) < 1e-9);
      taken += dart.angle().radians();
    }
    cloth_ = 2.0 * std::numbers::pi - taken;
    // All edges rise at one slope; their turns about the axis must close the round.
    const auto round = [&](double slope) {
      return kTriangles * turn_of(slope) - 2.0 * std::numbers::pi;
    };
    slope_ = solve_between(round, {1e-6, 1.4}, 1e-14);
  }

  /// The cloth's angle of a point about the apex, dart mouths left out, from level towards the
  /// centre front, clockwise: the first cut that never moves.
  [[nodiscard]] double cloth_angle(Point p) const {
    double flat = from_centre(p);
    double angle = flat;
    for (const Dart& dart : piece_.darts) {
      const double a = from_centre(dart.legs[0]), b = from_centre(dart.legs[1]);
      if (flat > std::max(a, b) - 1e-12) angle -= dart.angle().radians();
    }
    return angle;
  }
  [[nodiscard]] double radius(Point p) const { return distance(apex_, p); }

  /// Where the cloth at an angle and a distance from the apex lies in space.
  [[nodiscard]] InSpace in_space(double angle, double r) const {
    const double step = cloth_ / kTriangles;
    const double k = std::floor(angle / step);
    const double within = angle - k * step;
    // On the flat triangle between two edges: a combination of their directions.
    const InSpace a = edge(k), b = edge(k + 1.0);
    const double wa = std::sin(step - within) / std::sin(step),
                 wb = std::sin(within) / std::sin(step);
    return {r * (wa * a[0] + wb * b[0]), r * (wa * a[1] + wb * b[1]), r * (wa * a[2] + wb * b[2])};
  }

  /// Length of the line across the folded cloth between two of its points, summed over triangles.
  [[nodiscard]] double across(double angle_a, double ra, double angle_b, double rb) const {
    constexpr int parts = 400;
    const double spread = angle_b - angle_a;
    // The straight line in the cloth laid flat about the apex.
    const Point a{ra, 0.0}, b{rb * std::cos(spread), rb * std::sin(spread)};
    double sum = 0.0;
    InSpace last = in_space(angle_a, ra);
    for (int i = 1; i <= parts; ++i) {
      const Point p = between(a, b, static_cast<double>(i) / parts);
      const InSpace now = in_space(angle_a + std::atan2(p.y, p.x), std::hypot(p.x, p.y));
      sum += distance_in_space(last, now);
      last = now;
    }
    return sum;
  }

 private:
  static constexpr int kTriangles = 720;

  [[nodiscard]] double turn_of(double slope) const {
    const double c = std::cos(slope), s = std::sin(slope);
    return std::acos(std::clamp((std::cos(cloth_ / kTriangles) - s * s) / (c * c), -1.0, 1.0));
  }
  [[nodiscard]] InSpace edge(double k) const {
    const double turn = k * turn_of(slope_);
    return {std::cos(slope_) * std::cos(turn), std::cos(slope_) * std::sin(turn), std::sin(slope_)};
  }
  // 0 at the level line to the centre front, growing anticlockwise over the waist.
  [[nodiscard]] double from_centre(Point p) const {
    const double angle = angle_of(p - apex_).radians() - std::numbers::pi;
    return angle < -1e-12 ? angle + 2.0 * std::numbers::pi : angle;
  }

  const Piece& piece_;
  Point apex_;
  double cloth_ = 0.0;
  double slope_ = 0.0;
};

/// A second waist dart has an apex of its own: such a front is no cone.
bool is_cone(const Piece& piece) {
  return piece.darts.size() == 2 && distance(piece.darts[0].apex, piece.darts[1].apex) < 1e-9;
}

/// A point of an edge by its share of the closed edge: the same cloth before and after a move.
Point cloth_at(const Piece& piece, const std::string& edge_name, double share) {
  const Edge& edge = piece.edge(edge_name);
  const double along = share * sewn_length(piece, edge);
  return point_at_length(edge.path, cut_from_closed(piece, edge, along));
}

/// Ten lines across the bust: from the waist and centre front to side, armhole and shoulder, none
/// of their ends at a dart. (Not to the upper armhole: it may curve back under its own cut, so that
/// the angle about the apex does not tell on which side of a dart there a point lies.)
std::vector<double> lines_across(const Piece& piece) {
  struct Line {
    const char* from;
    double from_share;
    const char* to;
    double to_share;
  };
  constexpr Line lines[] = {
      {"centre_front", 0.62, "waist", 0.93},   {"centre_front", 0.70, "side", 0.17},
      {"centre_front", 0.75, "side", 0.43},    {"centre_front", 0.80, "side", 0.91},
      {"centre_front", 0.66, "armhole", 0.07}, {"waist", 0.11, "side", 0.37},
      {"waist", 0.07, "armhole", 0.13},        {"waist", 0.19, "side", 0.83},
      {"waist", 0.13, "waist", 0.97},          {"side", 0.11, "shoulder", 0.83}};
  const Cone cone(piece);
  std::vector<double> lengths;
  for (const Line& line : lines) {
    const Point a = cloth_at(piece, line.from, line.from_share);
    const Point b = cloth_at(piece, line.to, line.to_share);
    lengths.push_back(
        cone.across(cone.cloth_angle(a), cone.radius(a), cone.cloth_angle(b), cone.radius(b)));
  }
  return lengths;
}

}  // namespace

TEST_CASE("A cone of flat cloth keeps lengths that are known") {
  // A full round of cloth with nothing taken out lies flat: a chord is a chord.
  const Pattern block = checked_block(survey_people(1, 42).front()).block.pattern;
  const Piece& front = block.piece("front");
  REQUIRE(is_cone(front));
  const Cone cone(front);
  CHECK(cone.across(1.0, 100.0, 1.0 + std::numbers::pi / 3.0, 100.0) == Approx(100.0).margin(1e-3));
}

TEST_CASE("Ten lines across the bust of the folded cloth keep their lengths in every move") {
  const char* places[] = {"neck", "armhole", "side:0.3", "side:0.6", "french", "waist"};
  int compared = 0;
  for (const Session& session : each_person(60, 42)) {
    const Pattern block = checked_block(session).block.pattern;
    if (!is_cone(block.piece("front"))) continue;
    const std::vector<double> before = lines_across(block.piece("front"));
    for (const char* place : places) {
      const Pattern moved = pivot(block, {"front.shoulder", std::string("front.") + place, 0.3,
                                          std::nullopt, std::nullopt})
                                .pattern;
      const std::vector<double> after = lines_across(moved.piece("front"));
      for (std::size_t i = 0; i < before.size(); ++i) {
        INFO(place << ", line " << i);
        CHECK(after[i] == Approx(before[i]).margin(0.01));
        ++compared;
      }
    }
  }
  CHECK(compared > 1500);
}
