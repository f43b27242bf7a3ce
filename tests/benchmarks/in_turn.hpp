#pragma once

#include <algorithm>
#include <chrono>
#include <functional>
#include <vector>

namespace blockwright_benchmarks {

inline double seconds_of(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Requires: not empty.
inline double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

/// The ratio of each time to the mean of its neighbours, the other work just before and just after
/// it. Requires: one time more of the other work.
inline std::vector<double> to_neighbours(const std::vector<double>& times,
                                         const std::vector<double>& others) {
  std::vector<double> ratios;
  for (std::size_t i = 0; i < times.size(); ++i) {
    ratios.push_back(times[i] / (0.5 * (others[i] + others[i + 1])));
  }
  return ratios;
}

/// One work against another.
struct Against {
  double time = 0.0, other = 0.0;  ///< seconds, medians
  double ratio = 0.0;              ///< the median of the ratios to the neighbours
};

/// Two works in turn. Where the machine's speed drifts, a work and its neighbours meet the same
/// speed; where it jumps, few rounds are spoiled, and a median does not see them.
inline Against in_turn(int rounds, const std::function<void()>& work,
                       const std::function<void()>& other) {
  std::vector<double> times, others = {seconds_of(other)};
  for (int round = 0; round < rounds; ++round) {
    times.push_back(seconds_of(work));
    others.push_back(seconds_of(other));
  }
  return {median(times), median(others), median(to_neighbours(times, others))};
}

}  // namespace blockwright_benchmarks
