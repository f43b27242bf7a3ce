#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <vector>

namespace blockwright {

/// A value that was observed, and its standard deviation: 0 where it must not move.
struct Observation {
  double value = 0.0;
  double sd = 1.0;
};

/// What holds of observations together: their sum, each so many times, is at most `most`.
struct Bound {
  struct Term {
    std::size_t observation = 0;
    double times = 0.0;  ///< 0: not used
  };
  std::array<Term, 3> terms{};  ///< of different observations
  double most = 0.0;
  /// The most that it may push, for bounds that what does not move contradicts.
  double most_push = std::numeric_limits<double>::infinity();

  /// How far the observations are beyond it; less than 0 within.
  [[nodiscard]] double passed_by(std::span<const Observation> observations) const;
  /// The SD of the sum.
  [[nodiscard]] double sd(std::span<const Observation> observations) const;
};

/// How observations move so that bounds hold.
struct Movement {
  std::vector<double> by;    ///< of each observation
  std::vector<double> push;  ///< of each bound; 0 where it is kept without
};

/// The least movement, squares counted in SDs, that keeps every bound: the projection on what they
/// allow. One answer whatever the order, continuous in every value; made again it moves nothing.
/// Where bounds contradict each other it is the least of squares and of what is passed times
/// `most_push`.
///
/// Method: each bound in turn is given the push that just keeps it, until none changes (Hildreth
/// 1957, "A quadratic programming procedure"; from memory). Costs one round if every bound is kept.
Movement least_movement(std::span<const Observation> observations, std::span<const Bound> bounds);

/// What bounds that are met say of each observation (adjustment by conditions; Baarda 1968, "A
/// testing procedure for use in geodetic networks"; from memory).
struct Reliability {
  /// Of each, how much of an error in it would be found by the bounds: 0 none of it, 1 all. Summed
  /// they are the number of independent bounds.
  std::vector<double> redundancy;
  /// What it would move by to meet all of them in full, in SDs of such a movement; 0 if untouched.
  std::vector<double> residual;
};
Reliability reliability(std::span<const Observation> observations, std::span<const Bound> met);

}  // namespace blockwright
