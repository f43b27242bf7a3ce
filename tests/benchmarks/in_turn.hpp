#pragma once

#include <algorithm>
#include <functional>
#include <time.h>
#include <utility>
#include <vector>

namespace blockwright_benchmarks {

/// What is measured.
enum class Clock {
  Wall,    ///< how long one waits: for what needs a disk, or several threads
  Thread,  ///< how long this thread is at work: others that want the processor do not count
};

inline double seconds_by(Clock clock) {
  timespec now{};
  clock_gettime(clock == Clock::Wall ? CLOCK_MONOTONIC : CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

inline double seconds_of(const std::function<void()>& work, Clock clock = Clock::Wall) {
  const double start = seconds_by(clock);
  work();
  return seconds_by(clock) - start;
}

/// Requires: not empty.
inline double median(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

/// A work, and another that it is measured against.
struct Pair {
  std::function<void()> work, other;
};

/// What each round took, in seconds. The other work runs before and after, so that a speed that
/// changes evenly favours neither.
struct Round {
  double work = 0.0, other = 0.0;

  [[nodiscard]] double ratio() const { return work / other; }
};

inline Round round_of(const Pair& pair, Clock clock) {
  const double before = seconds_of(pair.other, clock);
  const double work = seconds_of(pair.work, clock);
  return {work, 0.5 * (before + seconds_of(pair.other, clock))};
}

inline double median(const std::vector<Round>& rounds, double (*of)(const Round&)) {
  std::vector<double> values;
  for (const Round& round : rounds) values.push_back(of(round));
  return median(std::move(values));
}

/// One work against another: seconds and ratio, each a median over the quietest third of the
/// rounds. What else the machine does slows the two unevenly, and a jump of its speed spoils a
/// round.
struct Against {
  double work = 0.0, other = 0.0, ratio = 0.0;
};

inline Against quietest(std::vector<Round> rounds) {
  const auto work = [](const Round& r) { return r.work; };
  const auto other = [](const Round& r) { return r.other; };
  const double usual_work = median(rounds, work), usual_other = median(rounds, other);
  std::ranges::sort(rounds, {},
                    [&](const Round& r) { return r.work / usual_work + r.other / usual_other; });
  rounds.resize((rounds.size() + 2) / 3);
  return {median(rounds, work), median(rounds, other),
          median(rounds, [](const Round& r) { return r.ratio(); })};
}

/// All pairs once in each round, so that all of them meet the same machine.
inline std::vector<Against> in_turn(int rounds, Clock clock, const std::vector<Pair>& pairs) {
  std::vector<std::vector<Round>> taken(pairs.size());
  for (int round = 0; round < rounds; ++round) {
    for (std::size_t i = 0; i < pairs.size(); ++i) taken[i].push_back(round_of(pairs[i], clock));
  }
  std::vector<Against> all;
  for (std::vector<Round>& of_pair : taken) all.push_back(quietest(std::move(of_pair)));
  return all;
}

}  // namespace blockwright_benchmarks
