#include "work_in_order.hpp"

#include <condition_variable>
#include <exception>
#include <map>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

/// So many tasks a thread may be ahead of the oldest one that is not done.
constexpr std::size_t kAheadPerThread = 16;

/// A queue that several threads work off; everything but the work itself happens under its lock.
class OrderedWork {
 public:
  OrderedWork(int jobs, const NextTask& next, const WorkOnTask& work, const HandOn& hand_on)
      : ahead_(kAheadPerThread * static_cast<std::size_t>(jobs)),
        next_(next),
        work_(work),
        hand_on_(hand_on) {}

  void run() {
    try {
      while (work_on_one()) continue;
    } catch (...) {
      const std::lock_guard lock(mutex_);
      if (!failure_) failure_ = std::current_exception();
      room_.notify_all();
    }
  }

  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

 private:
  bool work_on_one() {
    std::unique_lock lock(mutex_);
    room_.wait(lock, [this] { return failure_ || taken_ - handed_on_ < ahead_; });
    if (failure_) return false;
    const std::optional<BatchTask> task = next_();
    if (!task) return false;
    const std::size_t number = taken_++;
    lock.unlock();
    BatchLine line = work_(*task);
    lock.lock();
    done_.emplace(number, std::move(line));
    hand_on_what_is_next();
    return true;
  }

  void hand_on_what_is_next() {
    for (auto it = done_.find(handed_on_); it != done_.end(); it = done_.find(handed_on_)) {
      BatchLine line = std::move(it->second);
      done_.erase(it);
      ++handed_on_;
      hand_on_(std::move(line));
    }
    room_.notify_all();
  }

  std::size_t ahead_;
  const NextTask& next_;
  const WorkOnTask& work_;
  const HandOn& hand_on_;
  std::mutex mutex_;
  std::condition_variable room_;
  std::size_t taken_ = 0, handed_on_ = 0;
  std::map<std::size_t, BatchLine> done_;
  std::exception_ptr failure_;
};

}  // namespace

void work_in_order(int jobs, const NextTask& next, const WorkOnTask& work, const HandOn& hand_on) {
  OrderedWork queue(jobs, next, work, hand_on);
  {
    std::vector<std::jthread> others;
    for (int i = 1; i < jobs; ++i) others.emplace_back([&queue] { queue.run(); });
    queue.run();
  }
  queue.rethrow();
}

}  // namespace blockwright
