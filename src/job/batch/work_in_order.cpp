#include "batch_work.hpp"

#include <algorithm>
#include <chrono>
#include <deque>
#include <future>
#include <semaphore>
#include <utility>

namespace blockwright {
namespace {

/// For each job. A disk that is busy takes many sets in the time that it takes one.
constexpr std::size_t kBegunPerJob = 32;
/// Each that is written has some files open, and a process may often open no more than 1,024.
constexpr std::size_t kMostBegun = 96;

/// Gives a turn to draft back at its end.
class Turn {
 public:
  explicit Turn(std::counting_semaphore<>& free) : free_(free) {}
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn() { free_.release(); }

 private:
  std::counting_semaphore<>& free_;
};

bool is_done(const std::future<BatchLine>& line) {
  return line.wait_for(std::chrono::seconds(0)) == std::future_status::ready;
}

}  // namespace

BatchPace pace_of(int jobs) {
  return {jobs, std::min(kBegunPerJob * static_cast<std::size_t>(jobs), kMostBegun)};
}

JobResult work_in_order(const BatchPace& pace, const BatchSteps& steps) {
  JobResult all;
  std::counting_semaphore<> free(pace.jobs);
  std::deque<std::future<BatchLine>> begun;  // the oldest first
  const auto drafted = [&](const BatchTask& task) {
    const Turn turn(free);
    return steps.draft(task);
  };
  const auto hand_on_oldest = [&] {
    const BatchLine line = begun.front().get();
    begun.pop_front();
    if (line.failed()) all.exit_code = 1;
    all.files.insert(all.files.end(), line.result.files.begin(), line.result.files.end());
    steps.hand_on(line);
  };
  const auto next_task = [&] {
    while (begun.size() == pace.begun || (!begun.empty() && is_done(begun.front()))) {
      hand_on_oldest();
    }
    return steps.next();
  };
  while (std::optional<BatchTask> task = next_task()) {
    free.acquire();
    begun.push_back(std::async(
        std::launch::async, [&, task = std::move(*task)] { return steps.write(drafted(task)); }));
  }
  while (!begun.empty()) hand_on_oldest();
  return all;
}

}  // namespace blockwright
