// The fitting of the program itself, at a terminal that a test holds.
#include "support/at_terminal.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

namespace fit_terminal_test {

using namespace blockwright_tests;

namespace {

const std::string kClient = R"({
  "format": "blockwright-client-1", "name": "Pip Quill", "unit": "cm",
  "sessions": [ { "date": "2026-07-12", "tape": { "bust_girth": 94.0, "waist_girth": 74.0 } } ]
})";
const std::string kTakenBack = "\x7f";  // the key that takes one letter back
const std::string kInterrupt = "\x03";
const std::string kEndOfInput = "\x04";

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// Answers until one correction is written: wrong ones first, and letters taken back.
void add_one(AtTerminal& program) {
  REQUIRE(program.says("What do you see? >"));
  program.type("wobbly\n");
  REQUIRE(program.says("Not understood"));
  REQUIRE(program.says("What do you see? >"));
  program.type("armhole digs im" + kTakenBack + "n\n");
  REQUIRE(program.says("  a  lower underarm"));
  REQUIRE(program.says("\"back\" >"));
  program.type("a\n");
  REQUIRE(program.says("Usual 0.6 cm"));
  program.type("a lot\n");
  REQUIRE(program.says("is not an amount"));
  program.type("9" + kTakenBack + "1,0 cm\n");
  REQUIRE(program.says("Date of the fitting"));
  program.type("2026-07-20\n");
  REQUIRE(program.says("Which toile?"));
  program.type("\n");
  REQUIRE(program.says("On the pattern: bust"));
  REQUIRE(program.says("Write it?"));
  program.type("yes\n");
  REQUIRE(program.says("Added: lower underarm 1,0 cm, toile 1 of 2026-07-20."));
}

}  // namespace

TEST_CASE(
    "At a terminal, wrong answers and letters taken back lead to the correction all the same") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  AtTerminal program({kProgram, "fit", client, "--ask"});
  add_one(program);
  REQUIRE(program.says("What do you see? >"));
  program.type("\n");
  CHECK(program.says("Pip Quill, corrections in the order of work"));
  CHECK(program.wait() == 0);
  CHECK(has(read_bytes(client), R"("underarm", "by": 1.0, "seen": "armhole digs in")"));
}

TEST_CASE("At a terminal, Ctrl-C and the end of the input lose nothing that was added") {
  for (const std::string& end : {kInterrupt, kEndOfInput}) {
    const TempFolder folder;
    const std::string client = folder.write("pip.json", kClient);
    AtTerminal program({kProgram, "fit", client, "--ask"});
    add_one(program);
    REQUIRE(program.says("What do you see? >"));
    program.type("waist loose\n");
    REQUIRE(program.says("\"back\" >"));
    program.type("a\n");
    REQUIRE(program.says("Usual 1 cm on each half"));
    program.type(end);
    CHECK(program.says("lower underarm 1.0 cm (2026-07-20, toile 1)"));
    CHECK(program.wait() == 0);
    CHECK(has(read_bytes(client), R"("lower": "underarm", "by": 1.0)"));
    CHECK_FALSE(has(read_bytes(client), "\"waist\""));
  }
}

TEST_CASE(
    "At a terminal the prompt goes on from the words of --ask; with --report they are answered") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  AtTerminal asked({kProgram, "fit", client, "--ask", "waist loose"});
  REQUIRE(asked.says("  a  take in waist"));
  REQUIRE(asked.says("\"back\" >"));
  asked.type(kEndOfInput);
  CHECK(asked.wait() == 0);
  AtTerminal answered({kProgram, "fit", client, "--ask", "waist loose", "--report", "text"});
  CHECK(answered.says("--add \"take_in waist AMOUNT\""));
  CHECK(answered.wait() == 0);
  CHECK(read_bytes(client) == kClient);
}

TEST_CASE("draft keeps each answer to a sum at once, whatever comes after it") {
  const TempFolder folder;
  const std::string client = folder.write("verity.json", R"({
  "format": "blockwright-client-1", "name": "Verity Lark", "unit": "cm",
  "sessions": [
    { "date": "2026-01-10", "tape": { "bust_girth": 94, "waist_girth": 74, "shoulder_length": 12.4 } },
    { "date": "2026-07-12", "tape": { "bust_girth": 94, "waist_girth": 72, "shoulder_length": 11.8 } }
  ],
  "fittings": [ { "date": "2026-01-20", "toile": 1, "corrections": [
    { "take_in": "waist", "by": 2.0, "as": "whole_girth" }, { "shorten": "shoulder", "by": 0.6 } ] } ]
})");
  AtTerminal program({kProgram, "draft", client, "--out", folder.path("out")});
  REQUIRE(program.says("drop it (d)? >"));
  program.type("s\n");
  REQUIRE(program.says("drop it (d)? >"));
  program.type(kInterrupt);
  CHECK(program.says("Stopped before anything was drafted"));
  CHECK(program.wait() == 1);
  CHECK(has(program.said(), "What you answered is kept in " + client));
  CHECK(has(program.said(), "`blockwright draft " + client + "` asks the rest"));
  CHECK(has(read_bytes(client), R"("as": "whole_girth", "new_tape": { "settled": 0 })"));
  CHECK_FALSE(std::filesystem::exists(folder.path("out")));
}

TEST_CASE("In a folder that cannot be written the prompt says so before it asks") {
  if (::geteuid() == 0) return;  // root may write everywhere
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  REQUIRE(::chmod(folder.path("").c_str(), 0500) == 0);
  const ToolResult refused =
      run_tool("printf 'waist loose\\n' | " + kProgram + " fit --ask " + client);
  REQUIRE(::chmod(folder.path("").c_str(), 0700) == 0);
  CHECK(refused.exit_code == 2);
  CHECK(has(refused.output, "nothing can be written into this folder: Permission denied"));
  CHECK_FALSE(has(refused.output, "What do you see?"));
}

TEST_CASE("How an amount was read may be typed as it is said, after --as too") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  const ToolResult done =
      call("fit " + client + " --date 2026-07-20 --toile 1 --add 'take in side 1' --as 'per seam'");
  INFO(done.output);
  CHECK(done.exit_code == 0);
  CHECK(has(read_bytes(client), R"("side", "by": 1, "as": "per_seam")"));
}

TEST_CASE("In a pipe --ask answers and asks nothing; its place among the words does not matter") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  for (const std::string& line :
       {"fit " + client + " --ask 'waist loose'", "fit --ask 'waist loose' " + client}) {
    const ToolResult answered = call(line);
    INFO(line);
    CHECK(answered.exit_code == 0);
    CHECK(has(answered.output, "take_in waist"));
    CHECK(has(answered.output, "usual 1 cm on each half (0.5 to 3)"));
    CHECK_FALSE(has(answered.output, "What do you see?"));
  }
  const ToolResult asked = run_tool("printf '\\n' | " + kProgram + " fit --ask " + client);
  CHECK(asked.exit_code == 0);
  CHECK(has(asked.output, "What do you see?"));
}

TEST_CASE("Answers that are sent along with --ask and words are not read, which is said") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  const ToolResult sent = run_tool("printf 'a 1 per half\\n' | " + kProgram + " fit " + client +
                                   " --ask 'waist loose' 2>&1");
  CHECK(sent.exit_code == 0);
  CHECK(has(sent.output, "Answers in a pipe or file are not read here"));
  const ToolResult none =
      run_tool(kProgram + " fit " + client + " --ask 'waist loose' </dev/null 2>&1");
  CHECK(none.exit_code == 0);
  CHECK_FALSE(has(none.output, "are not read"));
}

TEST_CASE("At the command line each correction carries its own --as and --seen") {
  const TempFolder folder;
  const std::string client = folder.write("pip.json", kClient);
  const std::string fit = "fit " + client + " --date 2026-07-20 --toile 1 ";
  const ToolResult done =
      call(fit +
           "--add 'take in waist 5/8 in' --as per_half --seen loose "
           "--add 'lower front_neck 1 cm' --seen chokes --add 'let out side 0,5 per half'");
  INFO(done.output);
  REQUIRE(done.exit_code == 0);
  const std::string text = read_bytes(client);
  CHECK(has(text, R"("waist", "by": "5/8 in", "as": "per_half", "seen": "loose")"));
  CHECK(has(text, R"("front_neck", "by": 1, "seen": "chokes")"));
  CHECK(has(text, R"("side", "by": 0.5, "as": "per_half")"));
  CHECK(has(done.output, "take in waist 5/8 in (per half)"));
  const ToolResult early =
      call(fit + "--as per_half --add 'take in waist 1' --add 'let out side 1'");
  CHECK(early.exit_code == 2);
  CHECK(read_bytes(client) == text);
}

}  // namespace fit_terminal_test
