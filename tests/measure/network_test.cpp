#include "network.hpp"

#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace blockwright {
namespace {

Bound at_most(std::vector<Bound::Term> terms, double most) {
  Bound bound{.most = most};
  std::ranges::copy(terms, bound.terms.begin());
  return bound;
}

// A condition that is met exactly is a bound from both sides.
void must_be(std::vector<Bound>& bounds, const std::vector<Bound::Term>& terms, double sum) {
  std::vector<Bound::Term> turned = terms;
  for (Bound::Term& term : turned) term.times = -term.times;
  bounds.push_back(at_most(terms, sum));
  bounds.push_back(at_most(turned, -sum));
}

// The weighted levelling network of Wolf and Ghilani, "Adjustment Computations", the chapter on
// level nets (from memory): benchmarks X at 100.00 and Y at 107.50 ft, seven lines of 4, 3, 2, 3,
// 2, 2, 2 miles, whose variance is their length. Adjusted A 105.150, B 104.489, C 106.197; its
// three normal equations were solved again by hand.
TEST_CASE("a levelling network comes out as in the textbook") {
  const std::vector<double> rises{5.10, 2.34, -1.25, -6.13, -0.68, -3.00, 1.70};
  const std::vector<double> miles{4, 3, 2, 3, 2, 2, 2};
  std::vector<Observation> lines;
  for (std::size_t i = 0; i < rises.size(); ++i) lines.push_back({rises[i], std::sqrt(miles[i])});
  std::vector<Bound> closures;
  must_be(closures, {{0, 1}, {1, 1}}, 7.5);           // X to A to Y
  must_be(closures, {{2, 1}, {3, 1}}, -7.5);          // Y to C to X
  must_be(closures, {{1, 1}, {5, 1}, {4, -1}}, 0.0);  // A to Y to B to A
  must_be(closures, {{5, 1}, {6, 1}, {2, -1}}, 0.0);  // Y to B to C to Y
  const std::vector<double> by = least_movement(lines, closures).by;
  CHECK(100.0 + rises[0] + by[0] == Approx(105.150).margin(0.0005));
  CHECK(107.5 + rises[5] + by[5] == Approx(104.489).margin(0.0005));
  CHECK(100.0 - rises[3] - by[3] == Approx(106.197).margin(0.0005));
  // Seven lines for three heights: four are more than needed.
  const Reliability shown = reliability(lines, closures);
  CHECK(std::accumulate(shown.redundancy.begin(), shown.redundancy.end(), 0.0) == Approx(4.0));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    INFO("line " << i + 1);
    CHECK(by[i] == Approx(shown.residual[i] * lines[i].sd * std::sqrt(shown.redundancy[i])));
  }
}

// --- random networks -------------------------------------------------------------------------

struct Net {
  std::vector<Observation> observations;
  std::vector<Bound> bounds;
};

double sum_at(const Bound& bound, const std::vector<double>& values) {
  double sum = 0.0;
  for (const auto& [observation, times] : bound.terms) sum += times * values[observation];
  return sum;
}

// Bounds that a point near the observations keeps, so that they can all be kept; of whole and half
// times, as those of a tape are.
Net random_net(Random& random, int bounds) {
  Net net;
  std::vector<double> inside;
  for (int i = 0; i < 6; ++i) {
    net.observations.push_back({random.between(-10, 10), random.between(0.5, 3)});
    inside.push_back(net.observations.back().value + random.between(-5, 5));
  }
  for (int i = 0; i < bounds; ++i) {
    Bound bound;
    const int first = random.whole(0, 5), step = random.whole(1, 2);
    for (int k = 0; k < 3; ++k) {
      const auto o = static_cast<std::size_t>((first + k * step) % 6);
      bound.terms[static_cast<std::size_t>(k)] = {o, 0.5 * random.whole(-2, 2)};
    }
    bound.most = sum_at(bound, inside);
    net.bounds.push_back(bound);
  }
  return net;
}

double passed_by(const Net& net, const Bound& bound, const std::vector<double>& by) {
  return bound.passed_by(net.observations) + sum_at(bound, by);
}

using Matrix = std::vector<std::vector<double>>;

// Gauss's elimination with the largest pivot; empty where there is none.
std::optional<std::vector<double>> solved(Matrix m, std::vector<double> right) {
  const std::size_t size = right.size();
  for (std::size_t k = 0; k < size; ++k) {
    std::size_t pivot = k;
    for (std::size_t i = k; i < size; ++i) {
      if (std::abs(m[i][k]) > std::abs(m[pivot][k])) pivot = i;
    }
    if (std::abs(m[pivot][k]) < 1e-9) return std::nullopt;
    std::swap(m[k], m[pivot]);
    std::swap(right[k], right[pivot]);
    for (std::size_t i = 0; i < size; ++i) {
      if (i == k) continue;
      const double factor = m[i][k] / m[k][k];
      for (std::size_t j = 0; j < size; ++j) m[i][j] -= factor * m[k][j];
      right[i] -= factor * right[k];
    }
  }
  for (std::size_t k = 0; k < size; ++k) right[k] /= m[k][k];
  return right;
}

double covariance(const Net& net, const Bound& a, const Bound& b) {
  double sum = 0.0;
  for (const auto& [i, times] : a.terms) {
    for (const auto& [j, others] : b.terms) {
      if (i == j) sum += times * others * net.observations[i].sd * net.observations[i].sd;
    }
  }
  return sum;
}

// The movement that meets these bounds exactly, by the normal equations of the conditions.
std::optional<std::vector<double>> meeting(const Net& net, const std::vector<Bound>& met) {
  Matrix normal(met.size(), std::vector<double>(met.size()));
  std::vector<double> right;
  for (std::size_t i = 0; i < met.size(); ++i) {
    for (std::size_t j = 0; j < met.size(); ++j) normal[i][j] = covariance(net, met[i], met[j]);
    right.push_back(met[i].passed_by(net.observations));
  }
  const auto pushes = solved(normal, right);
  if (!pushes) return std::nullopt;
  std::vector<double> by(net.observations.size());
  for (std::size_t i = 0; i < met.size(); ++i) {
    for (const auto& [o, times] : met[i].terms) {
      by[o] -= (*pushes)[i] * times * net.observations[o].sd * net.observations[o].sd;
    }
  }
  return by;
}

double squares(const Net& net, const std::vector<double>& by) {
  double sum = 0.0;
  for (std::size_t i = 0; i < by.size(); ++i) sum += std::pow(by[i] / net.observations[i].sd, 2.0);
  return sum;
}

// The least of all movements that meet some of the bounds exactly and keep the rest: by trying each
// choice.
std::vector<double> least_by_trying(const Net& net) {
  std::vector<double> best;
  for (unsigned choice = 0; choice < 1U << net.bounds.size(); ++choice) {
    std::vector<Bound> met;
    for (std::size_t i = 0; i < net.bounds.size(); ++i) {
      if ((choice >> i & 1U) != 0U) met.push_back(net.bounds[i]);
    }
    const auto by = meeting(net, met);
    if (!by || (!best.empty() && squares(net, *by) >= squares(net, best))) continue;
    const auto kept = [&](const Bound& bound) { return passed_by(net, bound, *by) < 1e-7; };
    if (std::ranges::all_of(net.bounds, kept)) best = *by;
  }
  return best;
}

TEST_CASE("the least movement is that which trying every choice of bounds finds") {
  int moved = 0;
  for (Random& random : each_random(300, 5)) {
    const Net net = random_net(random, 6);
    const std::vector<double> by = least_movement(net.observations, net.bounds).by;
    const std::vector<double> best = least_by_trying(net);
    REQUIRE(best.size() == by.size());
    for (std::size_t i = 0; i < by.size(); ++i) CHECK(by[i] == Approx(best[i]).margin(1e-6));
    moved += squares(net, by) > 0.0 ? 1 : 0;
  }
  CHECK(moved > 150);
}

// The conditions of Karush, Kuhn and Tucker, which the least alone fulfils (plane mathematics).
TEST_CASE("bounds are kept, push one way, and push only where they are met") {
  for (Random& random : each_random(300, 6)) {
    const Net net = random_net(random, 12);
    const Movement movement = least_movement(net.observations, net.bounds);
    std::vector<double> pushed(net.observations.size());
    for (std::size_t i = 0; i < net.bounds.size(); ++i) {
      const double over = passed_by(net, net.bounds[i], movement.by);
      CHECK(over < 1e-6);
      CHECK(movement.push[i] >= 0.0);
      if (movement.push[i] > 1e-9) CHECK(over == Approx(0.0).margin(1e-6));
      for (const auto& [o, times] : net.bounds[i].terms) pushed[o] += movement.push[i] * times;
    }
    for (std::size_t o = 0; o < pushed.size(); ++o) {
      const double variance = net.observations[o].sd * net.observations[o].sd;
      CHECK(movement.by[o] == Approx(-variance * pushed[o]).margin(1e-9));
    }
  }
}

TEST_CASE("the order of bounds does not matter, and made again nothing moves") {
  for (Random& random : each_random(300, 8)) {
    Net net = random_net(random, 8);
    const std::vector<double> by = least_movement(net.observations, net.bounds).by;
    std::ranges::reverse(net.bounds);
    const std::vector<double> turned = least_movement(net.observations, net.bounds).by;
    for (std::size_t i = 0; i < by.size(); ++i) {
      CHECK(turned[i] == Approx(by[i]).margin(1e-7));
      net.observations[i].value += by[i];
    }
    for (const double again : least_movement(net.observations, net.bounds).by) {
      CHECK(again == Approx(0.0).margin(1e-6));
    }
  }
}

TEST_CASE("what may not move does not, and bounds that contradict each other push no further") {
  const std::vector<Observation> observations{{0.0, 0.0}, {0.0, 1.0}};
  std::vector<Bound> bounds{at_most({{0, 1}, {1, -1}}, -3.0), at_most({{0, -1}, {1, 1}}, 1.0)};
  for (Bound& bound : bounds) bound.most_push = 2.0;
  const std::vector<double> by = least_movement(observations, bounds).by;
  CHECK(by[0] == 0.0);
  CHECK(by[1] >= 1.0 - 1e-9);
  CHECK(by[1] <= 3.0 + 1e-9);
}

}  // namespace
}  // namespace blockwright
