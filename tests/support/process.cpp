#include "support/process.hpp"

#include <csignal>
#include <fcntl.h>
#include <stdexcept>
#include <sys/wait.h>
#include <unistd.h>

namespace blockwright_tests {
namespace {

constexpr int kCannotStart = 127;

/// What the new process does; comes back only if it cannot.
void become(std::vector<char*>& words, const char* output) {
  const int file = ::open(output, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (file < 0 || ::dup2(file, STDOUT_FILENO) < 0 || ::dup2(file, STDERR_FILENO) < 0) return;
  ::execv(words.front(), words.data());
}

}  // namespace

Process::Process(std::vector<std::string> command, const std::string& output) {
  std::vector<char*> words;
  words.reserve(command.size() + 1);
  for (std::string& word : command) words.push_back(word.data());
  words.push_back(nullptr);
  process_ = ::fork();
  if (process_ < 0) throw std::runtime_error("no process for " + command.front());
  if (process_ > 0) return;
  become(words, output.c_str());
  ::_exit(kCannotStart);
}

Process::~Process() {
  if (has_ended()) return;
  send(SIGKILL);
  (void)wait();
}

void Process::send(int signal) const {
  if (!ended_) ::kill(process_, signal);
}

bool Process::stop() {
  send(SIGSTOP);
  if (!ended_) ::waitpid(process_, &status_, WUNTRACED);
  ended_ = ended_ || !WIFSTOPPED(status_);
  return !ended_;
}

int Process::wait() {
  if (!ended_) ::waitpid(process_, &status_, 0);
  ended_ = true;
  if (WIFEXITED(status_) && WEXITSTATUS(status_) == kCannotStart) {
    throw std::runtime_error("the program cannot be started");
  }
  return WIFEXITED(status_) ? WEXITSTATUS(status_) : -1;
}

bool Process::has_ended() {
  if (!ended_) ended_ = ::waitpid(process_, &status_, WNOHANG) == process_;
  return ended_;
}

}  // namespace blockwright_tests
