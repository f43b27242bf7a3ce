#pragma once

#include <string>
#include <vector>

namespace blockwright_tests {

/// A program that runs beside the test. Killed if it still runs at the end.
class Process {
 public:
  /// Starts it; what it prints, errors too, goes into the file `output`. Throws std::runtime_error
  /// if it cannot be started.
  Process(std::vector<std::string> command, const std::string& output);
  ~Process();
  Process(const Process&) = delete;
  Process& operator=(const Process&) = delete;

  /// Sends a signal; to a program that has ended too, which changes nothing.
  void send(int signal) const;
  /// Stops it where it is, until it is sent SIGCONT. False if it has ended.
  bool stop();
  /// The exit code, or -1 if a signal ended it.
  int wait();
  [[nodiscard]] bool has_ended();

 private:
  int process_ = -1;
  bool ended_ = false;
  int status_ = 0;
};

}  // namespace blockwright_tests
