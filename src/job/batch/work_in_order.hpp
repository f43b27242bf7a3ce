#pragma once

#include "batch_line.hpp"

#include <functional>
#include <optional>
#include <string>

namespace blockwright {

/// One client to be worked on: a file, or a line of a stream with its text.
struct BatchTask {
  std::string client;
  std::string text;
};

/// Gives the next task, or nothing when there are no more; called by one thread at a time.
using NextTask = std::function<std::optional<BatchTask>()>;
/// Called by several threads at a time.
using WorkOnTask = std::function<BatchLine(const BatchTask&)>;
/// Called by one thread at a time, in the order of the tasks.
using HandOn = std::function<void(BatchLine)>;

/// Works on tasks in `jobs` threads at a time and hands their lines on in the order of the tasks.
/// Few tasks run ahead of a slow one, so that memory does not grow with their number. Throws what
/// the three functions throw, after the tasks in hand are done.
void work_in_order(int jobs, const NextTask& next, const WorkOnTask& work, const HandOn& hand_on);

}  // namespace blockwright
