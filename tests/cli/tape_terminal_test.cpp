// The tape session of the program itself, at a terminal that a test holds.
#include "support/at_terminal.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

using namespace blockwright_tests;

namespace {

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
