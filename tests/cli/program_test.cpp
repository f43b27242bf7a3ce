// The program as a person calls it: what it prints, where, and how it ends.
#include "support/program.hpp"

#include "blockwright/base/version.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>

using blockwright::each;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

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
  for (const char* command : each({"", "draft", "pivot", "adapt", "fit", "compare", "batch", "tape",
                                   "schema", "explain"})) {
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

TEST_CASE("fit and compare take a job file too, and the command line wins") {
  const TempFolder folder;
  const std::string file = folder.write("me.json", read_bytes(kDemo));
  const std::string fit = folder.write(
      "fit.json", R"({"format": "blockwright-job-1", "client": ")" + file +
                      R"(", "add": ["lower front_neck 1.0"], "date": "2026-03-21", "toile": 1,
      "report": "json"})");
  const ToolResult fitted = call("fit --job " + fit + " --add \"raise front_neck 0.5\"");
  CHECK(fitted.exit_code == 0);
  const auto report = nlohmann::json::parse(fitted.output);
  REQUIRE(report["corrections"].size() == 1);
  CHECK(report["corrections"][0]["row"] == 2);
  const std::string compare = folder.write(
      "compare.json", R"({"format": "blockwright-job-1", "client": ")" + file +
                          R"(", "toile": [1, 2], "write": ["svg"], "align": "bust", "out": ")" +
                          folder.path("o") + R"("})");
  const std::string wrong =
      folder.write("wrong.json", R"({"format": "blockwright-job-1", "client": ")" + file +
                                     R"(", "align": "hem"})");
  CHECK(complaint("compare --job " + wrong).output.find("wrong.json:1:") != std::string::npos);
  CHECK(call("compare --job " + wrong).exit_code == 2);
  CHECK(call("compare --align hem --job " + compare).exit_code == 2);
  CHECK(call("compare --job " + compare + " --align neck").exit_code == 0);
  CHECK(fs::exists(folder.path("o") + "/me-compare.svg"));
  CHECK(call("fit " + file + " --job " + compare).exit_code == 2);
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
  for (const char* name : each({"Анна.json", "שרה.json"})) {
    CHECK(call("draft " + folder.write(name, bytes) + " --write svg --out " + folder.path("o"))
              .exit_code == 0);
  }
  CHECK(files_in(folder.path("o")) == 2);
}

TEST_CASE("explain tells cause and cure") {
  const ToolResult result = call("explain draft.adjusted");
  CHECK(result.exit_code == 0);
  CHECK(result.output.find("cause:") != std::string::npos);
  CHECK(result.output.find("cure:") != std::string::npos);
}

TEST_CASE("pivot moves a dart and writes the overlay") {
  const TempFolder folder;
  const ToolResult result = call("pivot " + kDemo + " --dart front.shoulder --to front.side:0.25 " +
                                 "--part 0.5 --overlay --write svg --out " + folder.path("out"));
  CHECK(result.exit_code == 0);
  CHECK(result.output.find("front side") != std::string::npos);
  CHECK(files_in(folder.path("out")) == 2);
}

TEST_CASE("A pivot that cannot be ends in its reason and its cure, and writes nothing") {
  const TempFolder folder;
  const std::string out = " --out " + folder.path("out");
  const ToolResult result =
      complaint("pivot " + kDemo + " --dart front.shoulder --to front.hem" + out);
  CHECK(result.output.find("[dart.unknown] front.hem") != std::string::npos);
  CHECK(result.output.find("front.armhole") != std::string::npos);
  CHECK(files_in(folder.path("out")) == 0);
  CHECK(call("pivot " + kDemo + out).exit_code == 2);
  CHECK(call("adapt " + kDemo + out).exit_code == 2);
}

TEST_CASE("adapt makes a garment from a style file") {
  const TempFolder folder;
  const std::string style =
      std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/styles/princess-bodice.json";
  const ToolResult result =
      call("adapt " + kDemo + " " + style + " --write svg --out " + folder.path("out"));
  CHECK(result.exit_code == 0);
  CHECK(fs::exists(folder.path("out") + "/ondine-marsh-princess-bodice-garment.svg"));
}

TEST_CASE("fit adds a correction to the file, keeps the old text beside it, and can be asked") {
  const TempFolder folder;
  const std::string file = folder.write("me.json", read_bytes(kDemo));
  const ToolResult added =
      call("fit " + file + " --add \"lower front neck 1.0\" --date 2026-03-21 --toile 1");
  CHECK(added.exit_code == 0);
  CHECK(added.output.find("lower front neck 1.0 cm") != std::string::npos);
  CHECK(read_bytes(file + ".bak") == read_bytes(kDemo));
  CHECK(read_bytes(file).find("\"lower\": \"front_neck\"") != std::string::npos);
  // At the prompt: what is seen, the first answer, an amount, yes; then nothing more.
  const ToolResult asked = run_tool("printf 'nape gapes\\na\\n0.4\\nper half\\n\\n\\n' | " +
                                    kProgram + " fit " + file + " --ask");
  CHECK(asked.exit_code == 0);
  CHECK(asked.output.find("What do you see?") != std::string::npos);
  CHECK(asked.output.find("Added: ") != std::string::npos);
  // The end of the input in the middle of an answer keeps nothing.
  const std::string before = read_bytes(file);
  run_tool("printf 'nape gapes\\na\\n' | " + kProgram + " fit " + file + " --ask");
  CHECK(read_bytes(file) == before);
}

TEST_CASE("compare lays two sessions over each other") {
  const TempFolder folder;
  const std::string first = folder.write("a.json", read_bytes(kDemo));
  const std::string other =
      std::string(BLOCKWRIGHT_SOURCE_DIR) + "/examples/wardrobe/odalys-fenn.json";
  const ToolResult result =
      call("compare " + first + " " + other + " --write svg --out " + folder.path("out"));
  CHECK(result.exit_code == 0);
  CHECK(result.output.find("Points that moved") != std::string::npos);
  CHECK(fs::exists(folder.path("out") + "/a-and-odalys-fenn-compare.svg"));
}

TEST_CASE("A form and an empty file for a tape session are written without a question") {
  const TempFolder folder;
  const ToolResult form =
      call("tape --sheet --write svg --out " + folder.path("forms") + " </dev/null");
  CHECK(form.exit_code == 0);
  CHECK(files_in(folder.path("forms")) == 3);
  const std::string file = folder.path("me.json");
  CHECK(call("tape " + file + " --blank </dev/null").exit_code == 0);
  const std::string text = read_bytes(file);
  CHECK(text.find("\"name\": \"me\"") != std::string::npos);
  CHECK(text.find("\"date\": \"20") != std::string::npos);  // today's
  CHECK(complaint("tape " + file + " --blank").output.find("[file.write]") != std::string::npos);
  CHECK(read_bytes(file) == text);
  CHECK(complaint("tape --check").output.find("no client file was named") != std::string::npos);
}
