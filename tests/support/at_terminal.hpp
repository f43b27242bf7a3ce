#pragma once

#include <catch2/catch.hpp>

#include <array>
#include <csignal>
#include <poll.h>
#include <pty.h>
#include <stdexcept>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace blockwright_tests {

/// The program at a terminal of its own.
class AtTerminal {
 public:
  explicit AtTerminal(std::vector<std::string> command) {
    process_ = forkpty(&terminal_, nullptr, nullptr, nullptr);
    if (process_ < 0) throw std::runtime_error("no terminal can be had");
    if (process_ > 0) return;
    std::vector<char*> words;
    for (std::string& word : command) words.push_back(word.data());
    words.push_back(nullptr);
    execv(words.front(), words.data());
    _exit(127);
  }
  ~AtTerminal() {
    if (process_ > 0) kill(process_, SIGKILL);
    close(terminal_);
    if (process_ > 0) waitpid(process_, nullptr, 0);
  }
  AtTerminal(const AtTerminal&) = delete;
  AtTerminal& operator=(const AtTerminal&) = delete;

  void type(const std::string& keys) const {
    REQUIRE(write(terminal_, keys.data(), keys.size()) == static_cast<ssize_t>(keys.size()));
  }
  /// Reads until the program has said that; false if it ends before.
  bool says(const std::string& part) {
    std::size_t seen = said_.find(part, answered_);
    while (seen == std::string::npos && read_more()) seen = said_.find(part, answered_);
    if (seen == std::string::npos) return false;
    answered_ = seen + part.size();
    return true;
  }
  int wait() {
    if (process_ <= 0) return status_;
    while (read_more()) {
    }
    int status = 0;
    waitpid(process_, &status, 0);
    process_ = 0;
    status_ = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return status_;
  }
  [[nodiscard]] const std::string& said() const { return said_; }

 private:
  /// False at its end, and if nothing comes for so long that it hangs.
  bool read_more() {
    pollfd more{terminal_, POLLIN, 0};
    if (poll(&more, 1, 60000) <= 0) return false;
    std::array<char, 4096> bytes{};
    const ssize_t count = read(terminal_, bytes.data(), bytes.size());
    if (count <= 0) return false;  // the other end is closed
    said_.append(bytes.data(), static_cast<std::size_t>(count));
    return true;
  }

  int terminal_ = -1;
  int process_ = 0;
  int status_ = -1;
  std::string said_;
  std::size_t answered_ = 0;
};

}  // namespace blockwright_tests
