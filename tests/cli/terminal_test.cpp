// The program at a terminal: what it asks there, and nowhere else.
#include "support/each.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <csignal>
#include <poll.h>
#include <pty.h>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

namespace terminal_test {

using blockwright::each;
using namespace blockwright_tests;

namespace {

// Half a year after the fitting the new tape has the shorter shoulder that was asked for.
const std::string kClient = R"({
  "format": "blockwright-client-1", "name": "Verity Lark", "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": { "bust_girth": 94.0, "shoulder_length": 12.4 } },
    { "date": "2026-07-12", "tape": { "bust_girth": 94.0, "shoulder_length": 11.8 } }
  ],
  "fittings": [
    { "date": "2026-01-20", "toile": 1, "corrections": [ { "shorten": "shoulder", "by": 0.6 } ] }
  ]
})";
const std::string kQuestion = "Settle it so (s), keep it as it was (k), or drop it (d)?";

/// Runs a command in the shell with a terminal of its own, types the answers there, and gives back
/// all that the terminal shows. What takes longer than a minute is killed.
std::string at_terminal(const std::string& command, const std::string& answers) {
  std::string shell = "/bin/sh", option = "-c", line = command;
  const std::array<char*, 4> words = {shell.data(), option.data(), line.data(), nullptr};
  int terminal = -1;
  const pid_t child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  REQUIRE(child >= 0);
  if (child == 0) {
    ::execv(words.front(), words.data());
    ::_exit(127);
  }
  REQUIRE(::write(terminal, answers.data(), answers.size()) ==
          static_cast<ssize_t>(answers.size()));
  std::string shown;
  pollfd ready{terminal, POLLIN, 0};
  std::string chunk(4096, '\0');
  while (::poll(&ready, 1, 60000) > 0) {
    const ssize_t n = ::read(terminal, chunk.data(), chunk.size());
    if (n <= 0) break;  // EIO: the other end is closed
    shown.append(chunk, 0, static_cast<std::size_t>(n));
  }
  ::close(terminal);
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  return shown;
}

}  // namespace

TEST_CASE(
    "At a terminal a draft asks of what the new tape explains; for a reader of JSON it does not") {
  const TempFolder folder;
  const std::string end_of_input = "\x04";
  const auto draft = [&](const std::string& client, const std::string& report) {
    return kProgram + " draft " + client + " --write svg --out " + folder.path("out") +
           " --report " + report;
  };
  const std::string json = folder.write("json.json", kClient);
  const std::string unasked = at_terminal(draft(json, "json"), "k\n" + end_of_input);
  CHECK(unasked.find(kQuestion) == std::string::npos);
  CHECK(read_bytes(json) == kClient);
  const std::string piped = folder.write("piped.json", kClient);
  CHECK(run_tool("echo k | " + draft(piped, "text")).output.find(kQuestion) == std::string::npos);
  CHECK(read_bytes(piped) == kClient);
  const std::string text = folder.write("text.json", kClient);
  const std::string asked = at_terminal(draft(text, "text"), "k\n" + end_of_input);
  INFO(asked);
  CHECK(asked.find(kQuestion) != std::string::npos);
  CHECK(read_bytes(text).find("\"new_tape\": \"keep\"") != std::string::npos);
  CHECK(read_bytes(text + ".bak") == kClient);
}

}  // namespace terminal_test
