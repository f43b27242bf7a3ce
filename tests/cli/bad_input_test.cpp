// The bad client files of tests/bad-input: each ends in a message that tells the maker what to do,
// word for word as approved, and nothing is written. faults.txt says in a line what is wrong with
// each file, and which key and value the message must name. To approve new messages after reading
// them, run this test program with BLOCKWRIGHT_APPROVE=1 in the environment.
#include "support/each.hpp"
#include "support/program.hpp"
#include "support/sanitized.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using blockwright::each;
using blockwright::kSanitized;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

const std::string kFolder = std::string(BLOCKWRIGHT_SOURCE_DIR) + "/tests/bad-input/";
const std::string kApproved = kFolder + "approved.txt";
constexpr std::size_t kLeastFiles = 200;
constexpr const char* kNone = "-";

/// A line of faults.txt.
struct Fault {
  std::string file;
  std::string what;
  std::string key;    // "-" where the fault is at no key
  std::string value;  // "-" where there is no value to name
};

std::vector<std::string> split(const std::string& line, char separator) {
  std::vector<std::string> parts;
  std::istringstream in(line);
  for (std::string part; std::getline(in, part, separator);) parts.push_back(part);
  return parts;
}

std::vector<Fault> faults() {
  std::vector<Fault> all;
  for (const std::string& line : split(read_bytes(kFolder + "faults.txt"), '\n')) {
    const std::vector<std::string> columns = split(line, '\t');
    INFO(line);
    REQUIRE(columns.size() == 4);
    all.push_back({columns[0], columns[1], columns[2], columns[3]});
  }
  return all;
}

std::vector<std::string> bad_files() {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(kFolder)) {
    if (entry.path().extension() == ".json") names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string without_folder(std::string text) {
  for (std::size_t at = text.find(kFolder); at != std::string::npos; at = text.find(kFolder)) {
    text.erase(at, kFolder.size());
  }
  return text;
}

/// What the program answers to a file: its exit code, and what it prints to standard error.
std::string answer_to(const std::string& file, const std::string& out) {
  std::string call = "'" + kProgram + "' draft '";
  call += kFolder + file + "' --out '" + out + "'";
  const ToolResult result = run_tool("(" + call + " 2>&1 >/dev/null)");
  return "exit " + std::to_string(result.exit_code) + "\n" + without_folder(result.output);
}

/// Answers by file, from blocks of the file's name, the exit code and the messages.
std::map<std::string, std::string> approved_answers() {
  std::map<std::string, std::string> answers;
  std::string file;
  for (const std::string& line : split(read_bytes(kApproved), '\n')) {
    if (file.empty()) {
      file = line;
    } else if (line.empty()) {
      file.clear();
    } else {
      answers[file] += line + "\n";
    }
  }
  return answers;
}

void approve(const std::map<std::string, std::string>& answers) {
  std::ofstream out(kApproved, std::ios::binary);
  for (const auto& [file, answer] : answers) out << file << '\n' << answer << '\n';
}

bool contains(const std::string& text, const std::string& part) {
  return part == kNone || text.find(part) != std::string::npos;
}

/// The message without the file's name, which may hold the very words that are looked for.
std::string without_name(std::string text, const std::string& file) {
  for (std::size_t at = text.find(file); at != std::string::npos; at = text.find(file)) {
    text.erase(at, file.size());
  }
  return text;
}

}  // namespace

TEST_CASE("There are two hundred bad client files, no two alike, each listed with its fault") {
  const std::vector<std::string> files = bad_files();
  CHECK(files.size() >= kLeastFiles);
  std::vector<std::string> listed;
  std::set<std::string> contents, lines;
  for (const Fault& fault : each(faults())) {
    listed.push_back(fault.file);
    contents.insert(read_bytes(kFolder + fault.file));
    lines.insert(fault.what);
    CHECK_FALSE(fault.what.empty());
  }
  CHECK(listed == files);
  CHECK(contents.size() == files.size());
  CHECK(lines.size() == files.size());
}

TEST_CASE("Each bad client file ends in the approved message, and nothing is written") {
  const TempFolder folder;
  const std::string out = folder.path("out");
  std::map<std::string, std::string> answers;
  const std::vector<std::string> files = bad_files();
  // A start takes ten times as long where it is instrumented; the reader is fuzzed besides.
  const std::size_t step = kSanitized ? 4 : 1;
  for (std::size_t i = 0; i < files.size(); i += step) answers[files[i]] = answer_to(files[i], out);
  CHECK_FALSE(fs::exists(out));
  if (std::getenv("BLOCKWRIGHT_APPROVE") != nullptr) approve(answers);
  std::map<std::string, std::string> approved = approved_answers();
  CHECK(approved.size() == files.size());
  for (const auto& [file, answer] : answers) {
    INFO(file);
    CHECK(answer == approved[file]);
  }
}

TEST_CASE("Each approved message names the file, the key, the value and a cure in brackets") {
  std::map<std::string, std::string> approved = approved_answers();
  for (const Fault& fault : faults()) {
    const std::string& answer = approved[fault.file];
    const std::string words = without_name(answer, fault.file);
    INFO(fault.what << '\n' << answer);
    CHECK(answer.rfind("exit 1\nerror [client.", 0) == 0);
    CHECK(contains(answer, "] " + fault.file + ":"));
    CHECK(contains(words, fault.key));
    CHECK(contains(words, fault.value));
    CHECK(contains(answer, " ("));
    CHECK(answer.substr(answer.size() - std::min<std::size_t>(2, answer.size())) == ")\n");
  }
}
