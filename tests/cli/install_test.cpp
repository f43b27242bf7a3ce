// The two commands of the README on a machine that has not got the packages and cannot get them:
// they say in one line what is missing. The machine is a folder of stubs in place of the PATH.
#include "support/each.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

using blockwright::each;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

/// A machine on which no package is installed.
class BareMachine {
 public:
  BareMachine() {
    for (const char* tool :
         {"bash", "cat", "dirname", "env", "grep", "mktemp", "nproc", "rm", "tail", "tr"}) {
      fs::create_symlink(path_of(tool), folder_.path(tool));
    }
    add("dpkg-query", "exit 1");
    add("locale", "exit 0");
    add("apt-get", "exit 0");
    add("id", "echo 1000");
  }

  void add(const std::string& tool, const std::string& does) const {
    const std::string path = folder_.write(tool, "#!/bin/sh\n" + does + "\n");
    fs::permissions(path, fs::perms::owner_all);
  }

  /// What a command of the checkout says on standard error.
  [[nodiscard]] ToolResult call(const std::string& command) const {
    return run_tool("(PATH=" + folder_.path("") + " " BLOCKWRIGHT_SOURCE_DIR "/" + command +
                    " 2>&1 >/dev/null </dev/null)");
  }

 private:
  static std::string path_of(const std::string& tool) {
    std::string path = run_tool("command -v " + tool).output;
    path.pop_back();  // the line's end
    return path;
  }

  TempFolder folder_;
};

bool is_one_line(const std::string& text) {
  return std::ranges::count(text, '\n') == 1 && text.ends_with('\n');
}

const std::vector<std::string> kReadmeCommands = {"examples/first-block", "tests/run"};

}  // namespace

TEST_CASE("Without sudo the commands of the README say in one line what is missing") {
  for (const std::string& command : each(kReadmeCommands)) {
    for (const bool has_sudo : {false, true}) {
      INFO(has_sudo);
      const BareMachine machine;
      if (has_sudo) machine.add("sudo", "exit 1");  // it asks for a password that nobody types
      const ToolResult result = machine.call(command);
      CHECK(result.exit_code == 1);
      CHECK(is_one_line(result.output));
      CHECK(result.output.rfind("install: missing: ", 0) == 0);
      CHECK(result.output.find(" cmake ") != std::string::npos);
      CHECK(result.output.find("needs apt-get, and root or sudo)") != std::string::npos);
    }
  }
}

TEST_CASE("Without a network the commands of the README say in one line what is missing") {
  for (const std::string& command : each(kReadmeCommands)) {
    const BareMachine machine;
    machine.add("id", "echo 0");
    machine.add("apt-get", R"(case $1 in update) echo 'W: Some index files failed'; exit 0 ;; esac
echo 'Err:1 mirror'
echo 'E: Failed to fetch: Temporary failure resolving the mirror' >&2
echo 'E: Unable to fetch some archives' >&2
exit 100)");
    const ToolResult result = machine.call(command);
    CHECK(result.exit_code == 1);
    CHECK(is_one_line(result.output));
    CHECK(result.output.rfind("install: missing: ", 0) == 0);
    CHECK(result.output.find(" cmake ") != std::string::npos);
    CHECK(result.output.find("(apt-get could not install them: E: Failed to fetch: Temporary "
                             "failure resolving the mirror; is there a network?)\n") !=
          std::string::npos);
  }
}
