// The program as a person calls it: what it prints, where, and how it ends.
#include "blockwright/base/version.hpp"
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>

using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

const std::string kProgram = BLOCKWRIGHT_BINARY;
const std::string kDemo =
    std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe/ondine-marsh.json";

ToolResult call(const std::string& arguments) { return run_tool(kProgram + " " + arguments); }
/// Standard error alone.
ToolResult complaint(const std::string& arguments) {
  return run_tool("(" + kProgram + " " + arguments + " 2>&1 >/dev/null)");
}

long files_in(const std::string& folder) {
  if (!fs::exists(folder)) return 0;
  return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

}  // namespace

TEST_CASE("The option --version tells the version of the project") {
  const ToolResult result = call("--version");
  CHECK(result.exit_code == 0);
  CHECK(result.output == "blockwright " + std::string(blockwright::version()) + "\n");
}

TEST_CASE("The option --help works for the program and for each command") {
  for (const char* command : {"", "draft", "schema", "explain"}) {
    const ToolResult result = call(std::string(command) + " --help");
    CHECK(result.exit_code == 0);
    CHECK(result.output.find("--help") != std::string::npos);
  }
}

TEST_CASE("A wrong call ends in exit 2 and says what is wrong") {
  for (const char* arguments :
       {"", "dance", "draft", "draft --papr a4 x.json", "schema", "schema nothing",
        "explain no.such.code", "draft no-such-file.json"}) {
    INFO(arguments);
    CHECK(call(arguments).exit_code == 2);
    CHECK_FALSE(complaint(arguments).output.empty());
  }
}

TEST_CASE("A draft succeeds, writes its files and says nothing on standard error") {
  const TempFolder folder;
  const std::string arguments = "draft " + kDemo + " --out " + folder.path("o");
  CHECK(complaint(arguments).output.empty());
  const ToolResult result = call(arguments);
  CHECK(result.exit_code == 0);
  CHECK(files_in(folder.path("o")) == 2);
  CHECK(result.output.find("ondine-marsh-toile.pdf") != std::string::npos);
}

TEST_CASE(
    "A client file that is wrong ends in exit 1, names file, key, value and cure, writes nothing") {
  const TempFolder folder;
  const std::string client = folder.write("wrong.json", R"({"format": "blockwright-client-1",
    "name": "A", "unit": "cm", "sessions": [{"date": "2026-01-01", "tape": {"bust_girth": 925}}]})");
  const ToolResult result = complaint("draft " + client + " --out " + folder.path("o"));
  CHECK(call("draft " + client + " --out " + folder.path("o")).exit_code == 1);
  CHECK(result.output.find("wrong.json") != std::string::npos);
  CHECK(result.output.find("bust_girth") != std::string::npos);
  CHECK(result.output.find("925") != std::string::npos);
  CHECK(result.output.find("92.5") != std::string::npos);
  CHECK(files_in(folder.path("o")) == 0);
}

TEST_CASE("Options on the command line win over a job file's") {
  const TempFolder folder;
  const std::string job = folder.write(
      "job.json", R"({"format": "blockwright-job-1", "client": ")" + kDemo + R"(", "report": "json",
      "cut": "card", "write": ["svg"], "out": ")" +
                      folder.path("o") + R"("})");
  const auto report = nlohmann::json::parse(call("draft --job " + job + " --cut net").output);
  CHECK(report["files"].size() == 1);
  CHECK(fs::exists(folder.path("o/ondine-marsh-net.svg")));
}

TEST_CASE("An empty allowance is refused, not taken for none") {
  CHECK(call("draft " + kDemo + " --allowance ''").exit_code == 2);
  CHECK(call("draft " + kDemo + " --allowance 0x10").exit_code == 2);
}

TEST_CASE("The option --write takes one list and leaves the client file alone") {
  const TempFolder folder;
  CHECK(call("draft --write svg " + kDemo + " --out " + folder.path("o")).exit_code == 0);
}

TEST_CASE("A report that cannot be printed is a failure") {
  CHECK(call("schema client > /dev/full").exit_code == 1);
}

TEST_CASE("Clients with names in other scripts do not share a file name") {
  const TempFolder folder;
  const std::string bytes = read_bytes(kDemo);
  for (const char* name : {"Анна.json", "שרה.json"}) {
    CHECK(call("draft " + folder.write(name, bytes) + " --write svg --out " + folder.path("o"))
              .exit_code == 0);
  }
  CHECK(files_in(folder.path("o")) == 2);
}

TEST_CASE("explain tells cause and cure") {
  const ToolResult result = call("explain draft.limited");
  CHECK(result.exit_code == 0);
  CHECK(result.output.find("cause:") != std::string::npos);
  CHECK(result.output.find("cure:") != std::string::npos);
}
