// What writes PDF is loaded with the first PDF (docs/decisions/016-pdf-loaded-when-needed.md).
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

/// A copy of the program in `folder`, without what lies beside it.
std::string lone_program(const TempFolder& folder) {
  fs::create_directories(folder.path("bin"));
  fs::copy_file(kProgram, folder.path("bin/blockwright"));
  return folder.path("bin/blockwright");
}

ToolResult draft(const std::string& program, const TempFolder& folder, const std::string& kinds) {
  return run_tool(program + " draft " + kDemo + " --out " + folder.path("out") + " --write " +
                  kinds + " 2>&1");
}

}  // namespace

TEST_CASE("The program needs no PDF library to start") {
  // What the loader would load, by LD_TRACE_LOADED_OBJECTS (ld.so(8)).
  const ToolResult loads = run_tool("LD_TRACE_LOADED_OBJECTS=1 " + kProgram);
  REQUIRE(loads.output.find("libharfbuzz") != std::string::npos);
  CHECK(loads.output.find("qpdf") == std::string::npos);
  CHECK(loads.output.find("gnutls") == std::string::npos);
}

TEST_CASE("Without the part that writes PDF a draft says so, and nothing is half written") {
  const TempFolder folder;
  const std::string program = lone_program(folder);
  const ToolResult refused = draft(program, folder, "svg,pdf");
  INFO(refused.output);
  CHECK(refused.exit_code == 1);
  CHECK(refused.output.find("error [write.pdf] blockwright-pdf.so: ") != std::string::npos);
  CHECK(refused.output.find("--write svg") != std::string::npos);
  CHECK((!fs::exists(folder.path("out")) || fs::is_empty(folder.path("out"))));
  CHECK(draft(program, folder, "svg").exit_code == 0);
}

TEST_CASE("A draft that is refused before any PDF says why, whether PDF can be written or not") {
  const TempFolder folder;
  const std::string line = " draft " + folder.write("nobody.json", "{}") + " --out " +
                           folder.path("out") + " --write pdf 2>&1";
  const ToolResult refused = run_tool(lone_program(folder) + line);
  CHECK(refused.exit_code == 1);
  CHECK(refused.output == run_tool(kProgram + line).output);
  CHECK(refused.output.find("write.pdf") == std::string::npos);
}

TEST_CASE("The part that writes PDF is found beside the program, and where it is installed") {
  const TempFolder folder;
  const std::string program = lone_program(folder);
  const fs::path module = fs::path(kProgram).parent_path() / "blockwright-pdf.so";
  for (const char* place : {"bin", "lib/blockwright"}) {
    INFO(place);
    fs::create_directories(folder.path(place));
    const fs::path there = fs::path(folder.path(place)) / "blockwright-pdf.so";
    fs::copy_file(module, there);
    CHECK(draft(program, folder, "pdf").exit_code == 0);
    fs::remove(there);
  }
}
