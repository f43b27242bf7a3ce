// Values that come out as they went in. The maps are our own; their fixed points are known.
#include "blockwright/geometry/fixed_point.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace blockwright;

namespace {

constexpr int kMostTrials = 200;

double farthest(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return std::max({std::abs(a[0] - b[0]), std::abs(a[1] - b[1]), std::abs(a[2] - b[2])});
}

/// How many trials it takes until what comes out is off by less than 1e-8, and what then came out.
struct Found {
  int trials = 0;
  std::array<double, 3> values{};
};

template <class Map>
Found found(const Map& map, std::array<double, 3> tried = {}) {
  FixedPoint<3> point;
  for (int trials = 1; trials <= kMostTrials; ++trials) {
    const std::array<double, 3> came_out = map(tried);
    if (farthest(tried, came_out) < 1e-8) return {trials, came_out};
    tried = point.next(tried, came_out);
  }
  return {};
}

template <class Map>
int trials_without(const Map& map) {
  std::array<double, 3> tried{};
  for (int trials = 1; trials <= kMostTrials; ++trials) {
    const std::array<double, 3> came_out = map(tried);
    if (farthest(tried, came_out) < 1e-8) return trials;
    tried = came_out;
  }
  return kMostTrials + 1;
}

}  // namespace

TEST_CASE("A map that hardly draws together is found in few trials") {
  const auto slow = [](const std::array<double, 3>& v) {
    return std::array<double, 3>{3.0 + 0.9 * (v[0] - 3.0), -1.0 + 0.9 * (v[1] + 1.0), 0.5};
  };
  const Found at = found(slow);
  CHECK(at.trials <= 6);
  CHECK(farthest(at.values, {3.0, -1.0, 0.5}) < 1e-7);
  CHECK(trials_without(slow) > 100);
}

TEST_CASE("A map that swings about its fixed point settles there") {
  const auto swinging = [](const std::array<double, 3>& v) {
    return std::array<double, 3>{2.0 - 1.1 * (v[0] - 2.0), 5.0 - 0.95 * (v[1] - 5.0), v[1] - 5.0};
  };
  const Found at = found(swinging);
  CHECK(at.trials > 0);
  CHECK(at.trials <= 8);
  CHECK(farthest(at.values, {2.0, 5.0, 0.0}) < 1e-7);
  CHECK(trials_without(swinging) > kMostTrials);
}

TEST_CASE("A bent map is found in fewer trials than by repeating it") {
  const auto bent = [](const std::array<double, 3>& v) {
    return std::array<double, 3>{std::cos(v[0]), 0.5 * std::sin(v[1] + v[0]), 0.3 * v[0] * v[1]};
  };
  const Found at = found(bent);
  // The fixed point of the cosine: handbook value.
  CHECK(at.values[0] == Approx(0.7390851332151607).margin(1e-8));
  CHECK(farthest(bent(at.values), at.values) < 1e-7);
  CHECK(3 * at.trials < trials_without(bent));
}

TEST_CASE("Values that never change, and one that jumps, are given back as they came out") {
  FixedPoint<1> point;
  CHECK(point.next({4.0}, {4.0})[0] == 4.0);
  CHECK(point.next({4.0}, {4.0})[0] == 4.0);
  // The same trial again tells nothing new.
  FixedPoint<1> again;
  CHECK(again.next({0.0}, {1.0})[0] == 1.0);
  CHECK(again.next({0.0}, {1.0})[0] == 1.0);
}

TEST_CASE("Values without an answer stay within what each trial may move them") {
  // Each trial comes out 2 less: no value comes out as it went in.
  FixedPoint<1> point(50.0);
  double tried = 0.0;
  for (int trial = 1; trial <= 100; ++trial) {
    const double came_out = tried - 2.0;
    const double next = point.next({tried}, {came_out})[0];
    CHECK(std::abs(next - came_out) <= 50.0);
    tried = next;
  }
  CHECK(std::abs(tried) <= 100 * 52.0);
}
