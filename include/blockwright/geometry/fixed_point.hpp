#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

namespace blockwright {

/// Finds values that come out as they went in, by trying: each guess is made from the last trials.
/// Give the values one unit, or units of like worth.
///
/// Near the answer a trial gains two digits or more where plain repeating gains one or swings.
/// Deterministic. Source: D. G. Anderson, "Iterative Procedures for Nonlinear Integral Equations",
/// Journal of the ACM 12 (1965), 547-560 (from memory); which trials are left out is ours.
template <std::size_t count>
class FixedPoint {
 public:
  using Values = std::array<double, count>;

  /// No guess lies further than `most` from what came out, so that values without an answer do not
  /// run away.
  explicit FixedPoint(double most = std::numeric_limits<double>::infinity()) : most_(most) {}

  /// What to try next, when `tried` came out as `came_out`.
  Values next(const Values& tried, const Values& came_out) {
    const Trial now{came_out, less(came_out, tried)};
    Values guess = guess_from(now);
    for (std::size_t i = 0; i < count; ++i) {
      guess[i] = std::clamp(guess[i], came_out[i] - most_, came_out[i] + most_);
    }
    std::move_backward(earlier_.begin(), earlier_.end() - 1, earlier_.end());
    earlier_.front() = now;
    trials_ = std::min(trials_ + 1, earlier_.size());
    return guess;
  }

 private:
  /// A trial, or how one trial lies from another.
  struct Trial {
    Values came_out{};
    Values off{};  ///< by how much more than was tried
  };
  /// Further back the trials are too far from the answer to help.
  static constexpr std::size_t kMostEarlier = 5;
  /// A trial that lies almost on one line or plane with the later ones has nothing to add: so much
  /// of it, squared.
  static constexpr double kNothingNew = 1e-4;

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
  static void take(double share, const Values& of, Values& from) {
    for (std::size_t i = 0; i < count; ++i) from[i] -= share * of[i];
  }
  static void take(double share, const Trial& of, Trial& from) {
    take(share, of.came_out, from.came_out);
    take(share, of.off, from.off);
  }

  /// What would come out where what is off is least, if both change as between the trials.
  [[nodiscard]] Values guess_from(const Trial& now) const {
    Trial guess = now;
    std::array<Trial, kMostEarlier> ways;  // at right angles to each other
    std::array<double, kMostEarlier> squares{};
    std::size_t found = 0;
    for (std::size_t k = 0; k < trials_; ++k) {
      Trial way{less(now.came_out, earlier_[k].came_out), less(now.off, earlier_[k].off)};
      const double whole = dot(way.off, way.off);
      for (std::size_t j = 0; j < found; ++j)
        take(dot(way.off, ways[j].off) / squares[j], ways[j], way);
      const double square = dot(way.off, way.off);
      if (!(square > kNothingNew * whole)) continue;
      take(dot(guess.off, way.off) / square, way, guess);
      ways[found] = way;
      squares[found++] = square;
    }
    return guess.came_out;
  }

  double most_;
  std::array<Trial, kMostEarlier> earlier_{};  // the last one first
  std::size_t trials_ = 0;
};

}  // namespace blockwright
