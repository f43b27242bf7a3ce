#include "batch_work.hpp"

#include <deque>
#include <future>
#include <semaphore>
#include <utility>

namespace blockwright {
namespace {

/// So many tasks for each job are begun, so that a slow one does not hold up the others.
constexpr std::size_t kBegunPerJob = 8;

/// One of as many turns to work as there are jobs.
class Turn {
 public:
  explicit Turn(std::counting_semaphore<>& free) : free_(free) { free_.acquire(); }
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn() { free_.release(); }

 private:
  std::counting_semaphore<>& free_;
};

}  // namespace

JobResult work_in_order(int jobs, const std::function<std::optional<BatchTask>()>& next,
                        const std::function<BatchLine(const BatchTask&)>& work,
                        const std::function<void(const BatchLine&)>& hand_on) {
  // With one job, who waits for its line before sending the next task gets it.
  const std::size_t most = jobs == 1 ? 1 : kBegunPerJob * static_cast<std::size_t>(jobs);
  JobResult all;
  std::counting_semaphore<> free(jobs);
  std::deque<std::future<BatchLine>> begun;  // the oldest first
  const auto hand_on_oldest = [&] {
    const BatchLine line = begun.front().get();
    begun.pop_front();
    if (line.failed()) all.exit_code = 1;
    all.files.insert(all.files.end(), line.result.files.begin(), line.result.files.end());
    hand_on(line);
  };
  const auto next_task = [&] {
    if (begun.size() == most) hand_on_oldest();
    return next();
  };
  while (std::optional<BatchTask> task = next_task()) {
    begun.push_back(std::async(std::launch::async, [&, task = std::move(*task)] {
      const Turn turn(free);
      return work(task);
    }));
  }
  while (!begun.empty()) hand_on_oldest();
  return all;
}

}  // namespace blockwright
