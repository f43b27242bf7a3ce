// The program itself with names and words that mean harm: what reaches the terminal.
#include "../../src/cli/terminal.hpp"
#include "support/each.hpp"
#include "support/hostile_texts.hpp"
#include "support/program.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <sstream>

using namespace blockwright;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

/// For the shell.
std::string quoted(const std::string& text) {
  std::string result = "'";
  for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return result + "'";
}

/// A few of each kind that can be the name of a file.
std::vector<std::string> names() {
  std::vector<std::string> names;
  const std::vector<std::string> all = hostile_texts();
  for (std::size_t i = 0; i < all.size(); i += kSanitized ? 83 : 41) {
    if (all[i].size() < 200 && all[i].find('/') == std::string::npos) names.push_back(all[i]);
  }
  for (const char* name : {"x\ndone      forged.json: Eve", "\033[31mred\033]0;title\007",
                           "\u202egpj.nosj", "\u009b2J", "\xff\xfe"}) {
    names.emplace_back(name);
  }
  return names;
}

ToolResult checked(const std::string& arguments) {
  ToolResult result = call(arguments);
  const auto harm = harm_in(result.output);
  INFO(arguments << "\n" << harm.value_or(""));
  CHECK_FALSE(harm);
  CHECK(result.exit_code <= 2);
  return result;
}

}  // namespace

TEST_CASE("The program sends nothing harmful, whatever files are called and whatever is typed") {
  const TempFolder folder;
  const std::string out = " --write json --out " + folder.path("out");
  REQUIRE(names().size() > 5);
  for (const std::string& name : each(names())) {
    const std::string there = folder.path("people/" + name + ".json");
    fs::create_directories(folder.path("people"));
    fs::copy_file(kDemo, there, fs::copy_options::overwrite_existing);
    const std::string file = quoted(there), word = quoted(name);
    CHECK(checked("draft " + file + out).exit_code == 0);
    CHECK(checked("draft " + file + out + " --report json").exit_code == 0);
    CHECK(
        checked("draft " + kDemo + " --write json --out " + quoted(folder.path(name))).exit_code ==
        0);
    checked("draft -- " + word);
    checked("fit " + file + " --add " + quoted("lower " + name + " 1"));
    checked("compare " + file + " --session=" + word);
    CHECK(checked("tape --check " + file).exit_code == 0);
    checked("tape " + file + " --by=" + word + " --date=" + word + " </dev/null");
    checked("pivot " + file + " --dart=" + word + " --to=" + word + out);
    checked("adapt " + file + " " + file + out);
    checked("explain -- " + word);
    checked("schema -- " + word);
    checked("-- " + word);
    checked("draft " + file + " " + word + " " + word);
    checked("draft " + file + " --job=" + word + " --paper=" + word);
    const ToolResult batch = checked("batch " + quoted(folder.path("people")) + out);
    CHECK(std::count(batch.output.begin(), batch.output.end(), '\n') <= 3);
    CHECK(batch.output.find("\ndone      forged") == std::string::npos);
    const ToolResult json =
        checked("batch " + quoted(folder.path("people")) + out + " --report json");
    CHECK(nlohmann::json::accept(json.output));
    fs::remove_all(folder.path("people"));
    fs::remove_all(folder.path("out"));
  }
}

TEST_CASE("What is printed is printable, whoever forgot to see to it") {
  std::ostringstream out;
  print(out, "Ondine Łucja\n\x1b[2J\r\u009b\u202e\xff\n");
  CHECK(out.str() == "Ondine Łucja\n\\u001b[2J\\r\\u009b\\u202e\\xff\n");
}

TEST_CASE("A word of 64 KB at the command line is cut in the message") {
  const std::string word(64 * 1024, 'a');
  for (const char* before : {"draft ", "explain ", "schema ", "draft x.json --paper ",
                             "draft x.json --", "draft x.json "}) {
    const ToolResult result = checked(before + word);
    CHECK(result.exit_code == 2);
    CHECK(result.output.find(" more)") != std::string::npos);
    CHECK(result.output.size() < 4000);
  }
}
