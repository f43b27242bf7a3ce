// The tape session of the program itself, at a terminal that a test holds.
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <poll.h>
#include <pty.h>
#include <sstream>
#include <stdexcept>
#include <sys/wait.h>
#include <unistd.h>

using namespace blockwright_tests;

namespace {

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

std::string content_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("At a terminal, with a key taken back, Ctrl-C writes what was entered") {
  const TempFolder folder;
  const std::string client = folder.path("me.json");
  AtTerminal program({kProgram, "tape", client, "--unit", "cm", "--by", "R."});
  REQUIRE(program.says("Name >"));
  program.type("Pip Quill\n");
  REQUIRE(program.says("Date of this session"));
  program.type("2026-08-01\n");
  REQUIRE(program.says("bust girth, cm >"));
  program.type(
      "9\x7f"
      "88\n");  // the first digit is taken back
  REQUIRE(program.says("underbust girth, cm >"));
  program.type("\x03");
  CHECK(program.says("1 measurement of 2026-08-01"));
  CHECK(program.wait() == 0);
  CHECK(has(content_of(client), "\"bust_girth\": 88\n"));
}

TEST_CASE("At a terminal, the end of the input writes what was entered") {
  const TempFolder folder;
  const std::string client = folder.path("me.json");
  AtTerminal program(
      {kProgram, "tape", client, "--unit", "in", "--by", "R.", "--date", "2026-08-01"});
  REQUIRE(program.says("Name >"));
  program.type("Pip Quill\n");
  REQUIRE(program.says("bust girth, in >"));
  program.type("34 1/2 34 3/4\n");
  REQUIRE(program.says("underbust girth, in >"));
  program.type("\x04");
  CHECK(program.wait() == 0);
  CHECK(has(content_of(client), R"("bust_girth": ["34 1/2", "34 3/4"])"));
}

TEST_CASE("Ctrl-C before anything was entered leaves no file and is no success") {
  const TempFolder folder;
  const std::string client = folder.path("me.json");
  AtTerminal program({kProgram, "tape", client});
  REQUIRE(program.says("Name >"));
  program.type("\x03");
  CHECK(program.says("Nothing is written"));
  CHECK(program.wait() == 1);
  CHECK_FALSE(std::filesystem::exists(client));
}

TEST_CASE("A session through a pipe is drafted from and judged") {
  const TempFolder folder;
  const std::string client = folder.path("me.json");
  const ToolResult taken =
      run_tool("printf 'Pip Quill\\ncm\\n2026-08-01\\nR.\\n88\\n76\\n68\\n' | " + kProgram +
               " tape " + client);
  CHECK(taken.exit_code == 0);
  const ToolResult judged = call("tape --check " + client);
  CHECK(judged.exit_code == 0);
  CHECK(has(judged.output, "Pip Quill, session of 2026-08-01: 3 taken, 18 estimated."));
  CHECK(call("draft " + client + " --write svg --out " + folder.path("out")).exit_code == 0);
}

TEST_CASE("What cannot be written is shown, without an option that the session has not got") {
  const ToolResult taken =
      run_tool("printf 'Pip\\ncm\\n2026-08-01\\nR.\\n88\\n' | " + kProgram + " tape /proc/me.json");
  CHECK(taken.exit_code == 1);
  CHECK(has(taken.output, "What you entered, of 2026-08-01:\n  bust girth: 88\n"));
  CHECK(has(taken.output, "file.write"));
  CHECK_FALSE(has(taken.output, "--out"));
}
