#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace blockwright {

/// Finds values that come out as they went in, by trying: each guess is made from the last three
/// trials. Give the values one unit, or units of like worth.
///
/// Near the answer a trial gains two digits or more where plain repeating gains one or swings.
/// Deterministic. Source: D. G. Anderson, "Iterative Procedures for Nonlinear Integral Equations",
/// Journal of the ACM 12 (1965), 547-560 (from memory), with two trials before the last; the bound
/// on their weights is ours.
template <std::size_t count>
class FixedPoint {
 public:
  using Values = std::array<double, count>;

  /// What to try next, when `tried` came out as `came_out`.
  Values next(const Values& tried, const Values& came_out) {
    const Trial now{came_out, less(came_out, tried)};
    Values guess = came_out;
    const auto [one, two] = weights(now.off);
    for (std::size_t i = 0; i < count; ++i) {
      guess[i] -= one * (came_out[i] - before_.came_out[i]);
      guess[i] -= two * (came_out[i] - two_before_.came_out[i]);
    }
    two_before_ = before_;
    before_ = now;
    trials_ = std::min(trials_ + 1, 2);
    return guess;
  }

 private:
  struct Trial {
    Values came_out{};
    Values off{};  ///< by how much more than was tried
  };
  struct Weights {
    double one = 0.0, two = 0.0;  ///< of the trial before, and of the one before that
  };
  static constexpr double kMostWeight = 4.0;
  /// Trials on nearly one line have one direction.
  static constexpr double kOneLine = 1e-6;

  static Values less(const Values& a, const Values& b) {
    Values v{};
    for (std::size_t i = 0; i < count; ++i) v[i] = a[i] - b[i];
    return v;
  }
  static double dot(const Values& a, const Values& b) {
    double sum = 0.0;
    for (std::size_t i = 0; i < count; ++i) sum += a[i] * b[i];
    return sum;
  }
  static double bounded(double weight) { return std::clamp(weight, -kMostWeight, kMostWeight); }

  /// The weights that make what is off least, if it grows as between the trials.
  [[nodiscard]] Weights weights(const Values& off) const {
    if (trials_ == 0) return {};
    const Values to_one = less(off, before_.off);
    const double one = dot(to_one, to_one), by_one = dot(to_one, off);
    if (!(one > 0.0)) return {};
    if (trials_ == 1) return {bounded(by_one / one), 0.0};
    const Values to_two = less(off, two_before_.off);
    const double two = dot(to_two, to_two), by_two = dot(to_two, off), both = dot(to_one, to_two);
    const double apart = one * two - both * both;
    if (!(apart > kOneLine * one * two)) return {bounded(by_one / one), 0.0};
    return {bounded((by_one * two - by_two * both) / apart),
            bounded((by_two * one - by_one * both) / apart)};
  }

  Trial before_, two_before_;
  int trials_ = 0;
};

}  // namespace blockwright
