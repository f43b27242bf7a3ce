#include "blockwright/geometry/solve.hpp"

#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <functional>
#include <limits>
#include <string>
#include <vector>

using namespace blockwright;

namespace {

struct Known {
  std::string what;
  std::function<double(double)> f;
  double root;
  bool smooth;  // and with a slope at the root
};

// Each changes its sign once between 0 and 10.
std::vector<Known> known_roots() {
  return {
      {"line", [](double x) { return x - 3.3; }, 3.3, true},
      {"falling line", [](double x) { return 1e-9 * (3.3 - x); }, 3.3, true},
      {"cubic", [](double x) { return x * x * x - 2.0 * x - 5.0; }, 2.0945514815423265, true},
      {"exponential", [](double x) { return std::exp(x) - 40.0; }, std::log(40.0), true},
      {"square root", [](double x) { return std::sqrt(x) - 1.3; }, 1.69, true},
      {"arc tangent", [](double x) { return std::atan(20.0 * (x - 7.0)); }, 7.0, true},
      {"ninth power", [](double x) { return std::pow(x - 3.0, 9.0); }, 3.0, false},
      {"kink", [](double x) { return (x < 3.3 ? 0.01 : 1.0) * (x - 3.3); }, 3.3, false},
      {"step", [](double x) { return x < 3.3 ? -1.0 : 1e6; }, 3.3, false},
      {"near an end", [](double x) { return 1.0 - 1e-7 / (x + 1e-12); }, 1e-7 - 1e-12, false},
  };
}

}  // namespace

TEST_CASE("a root is found within the accuracy asked for, in either order of the ends") {
  for (const Known& known : known_roots()) {
    for (double accuracy = 1e-1; accuracy > 1e-13; accuracy *= 0.1) {
      CAPTURE(known.what, accuracy);
      CHECK(std::abs(solve_between(known.f, {0.0, 10.0}, accuracy) - known.root) <=
            accuracy + 4e-15 * known.root);
      CHECK(std::abs(solve_between(known.f, {10.0, 0.0}, accuracy) - known.root) <=
            accuracy + 4e-15 * known.root);
    }
  }
}

TEST_CASE("the steps are bounded for any function, and few for a smooth one") {
  for (const Known& known : known_roots()) {
    for (const double accuracy : {1e-3, 1e-6, 1e-10}) {
      int steps = 0;
      const auto counted = [&](double x) {
        ++steps;
        return known.f(x);
      };
      solve_between(counted, {0.0, 10.0}, accuracy);
      CAPTURE(known.what, accuracy);
      CHECK(steps <= 4.0 * std::log2(10.0 / accuracy) + 6.0);
      if (known.smooth) CHECK(steps <= 16);
    }
  }
}

TEST_CASE("a bracket that three tries did not halve is halved by the next") {
  // All places lie on the line x - 9, so that every guess is 9; the tries creep up from 0 instead.
  Bracket bracket({0.0, -9.0}, {10.0, 1.0});
  for (const double x : each({0.01, 0.02, 0.03})) {
    CHECK(bracket.next(1e-9) == Approx(9.0));
    bracket.narrow({x, x - 9.0});
  }
  CHECK(bracket.next(1e-9) == Approx(0.5 * (0.03 + 10.0)));
}

TEST_CASE("an accuracy of nought ends at the rounding") {
  for (const Known& known : known_roots()) {
    int steps = 0;
    const auto counted = [&](double x) {
      ++steps;
      return known.f(x);
    };
    CAPTURE(known.what);
    CHECK(solve_between(counted, {0.0, 10.0}, 0.0) == Approx(known.root).epsilon(1e-14));
    CHECK(steps < 400);
  }
}

TEST_CASE("an end that is a root is the answer") {
  const auto f = [](double x) { return x * (x - 10.0); };
  CHECK(solve_between(f, {0.0, 5.0}, 1e-6) == 0.0);
  CHECK(solve_between(f, {5.0, 10.0}, 1e-6) == 10.0);
}

TEST_CASE("without a change of sign the end that comes nearer is the answer") {
  CHECK(solve_between([](double x) { return x + 1.0; }, {0.0, 10.0}, 1e-6) == 0.0);
  CHECK(solve_between([](double x) { return x - 11.0; }, {0.0, 10.0}, 1e-6) == 10.0);
  CHECK(solve_between([](double x) { return -x - 1.0; }, {10.0, 0.0}, 1e-6) == 0.0);
  CHECK(solve_between([](double) { return 2.0; }, {3.0, 10.0}, 1e-6) == 3.0);
}

TEST_CASE("the function was last seen at the answer, between the ends") {
  for (const Known& known : known_roots()) {
    std::vector<double> tried;
    const auto noted = [&](double x) {
      tried.push_back(x);
      return known.f(x);
    };
    const double x = solve_between(noted, {0.0, 10.0}, 1e-6);
    CAPTURE(known.what);
    CHECK(std::find(tried.begin(), tried.end(), x) != tried.end());
    for (const double place : tried) CHECK((place >= 0.0 && place <= 10.0));
  }
}

TEST_CASE("a function that is not a number comes to an end") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  int steps = 0;
  const auto broken = [&](double x) {
    ++steps;
    return x == 0.0 ? 1.0 : nan;
  };
  const double x = solve_between(broken, {0.0, 10.0}, 1e-9);
  CHECK((x >= 0.0 && x <= 10.0));
  CHECK(steps < 400);
}

TEST_CASE("from a guess the same root is found, wherever the guess lies") {
  for (const Known& known : known_roots()) {
    // The falling ones rise as their negatives.
    const double sign = known.f(0.0) < 0.0 ? 1.0 : -1.0;
    const auto rising = [&](double x) { return sign * known.f(x); };
    for (const double guess : {known.root, known.root + 1e-9, 0.0, 0.4, 5.0, 10.0, -3.0, 40.0}) {
      CAPTURE(known.what, guess);
      CHECK(std::abs(solve_near(rising, guess, {0.0, 10.0}, 1e-10) - known.root) <=
            1e-10 + 4e-15 * known.root);
    }
  }
}

TEST_CASE("from a good guess a root takes fewer steps than without") {
  const auto steps_of = [](auto&& solve) {
    int steps = 0;
    solve([&](double x) {
      ++steps;
      return std::exp(x) - 40.0;
    });
    return steps;
  };
  const int without = steps_of([](auto&& f) { return solve_between(f, {0.0, 10.0}, 1e-11); });
  const int with = steps_of([](auto&& f) {
    return solve_near(f, std::log(40.0) + 1e-6, {0.0, 10.0}, 1e-11);
  });
  CHECK(2 * with <= without + 1);
}

TEST_CASE("from a guess, the end is returned behind which the root lies") {
  const auto line = [](double x) { return x - 12.0; };
  CHECK(solve_near(line, 4.0, {0.0, 10.0}, 1e-9) == 10.0);
  CHECK(solve_near(line, 40.0, {0.0, 10.0}, 1e-9) == 10.0);
  CHECK(solve_near([](double x) { return x + 2.0; }, 4.0, {0.0, 10.0}, 1e-9) == 0.0);
  CHECK(solve_near([](double) { return 0.0; }, 4.0, {0.0, 10.0}, 1e-9) == 4.0);
}
