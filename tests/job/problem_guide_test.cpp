#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "support/each.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace blockwright {
namespace {

namespace fs = std::filesystem;

const fs::path kRoot = BLOCKWRIGHT_SOURCE_DIR;
const fs::path kGuide = kRoot / "src/job/problem_guide.cpp";
constexpr const char* kCode =
    "(client|measure|job|file|paper|check|draft|dart|style|fit|batch|pattern|schema|explain|"
    "program)\\.["
    "a-z_]+";

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  INFO(path);
  REQUIRE(file.good());
  return {std::istreambuf_iterator<char>(file), {}};
}

/// What `group` of the pattern catches, in the order of the text.
std::vector<std::string> matches(const std::string& text, const std::string& pattern, int group) {
  const std::regex regex(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), regex), end; it != end; ++it) {
    found.push_back((*it)[static_cast<std::size_t>(group)].str());
  }
  return found;
}

/// The part of docs/problems.md under one heading.
struct Chapter {
  std::string code;
  std::vector<std::string> lines;

  /// The line that begins with the word in bold, without it.
  [[nodiscard]] std::string told(const std::string& word) const {
    const std::string begin = "**" + word + ".** ";
    for (const std::string& line : lines) {
      if (line.starts_with(begin)) return line.substr(begin.size());
    }
    return {};
  }
};

std::vector<Chapter> chapters() {
  std::vector<Chapter> all;
  std::istringstream text(text_of(kRoot / "docs/problems.md"));
  for (std::string line; std::getline(text, line);) {
    if (line.starts_with("## ")) {
      all.push_back({line.substr(3), {}});
    } else if (!all.empty()) {
      all.back().lines.push_back(line);
    }
  }
  return all;
}

std::vector<std::string> codes_of_guide() {
  return matches(text_of(kGuide), "Guide\\{\\s*\"([a-z_.]+)\"", 1);
}

bool is_source(const fs::path& path) {
  return path.extension() == ".cpp" || path.extension() == ".hpp";
}

/// Every code that the sources raise: in quotes, or in the brackets of a printed problem. The
/// guide's own list does not count.
std::set<std::string> codes_raised() {
  const std::string raised = "[\"\\[](" + std::string(kCode) + ")[\"\\]]";
  std::set<std::string> codes;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "src")) {
    if (!entry.is_regular_file() || !is_source(entry.path())) continue;
    std::string text = text_of(entry.path());
    if (entry.path() == kGuide)
      text = std::regex_replace(text, std::regex("Guide\\{\\s*\"[^\"]*\""), "");
    for (std::string& code : matches(text, raised, 1)) codes.insert(std::move(code));
  }
  return codes;
}

TEST_CASE("every problem code that the program raises is explained, and no other") {
  const std::vector<std::string> guide = codes_of_guide();
  const std::set<std::string> raised = codes_raised();
  CHECK(guide.size() > 30);
  CHECK(std::set<std::string>(guide.begin(), guide.end()) == raised);
  CHECK(std::is_sorted(guide.begin(), guide.end()));
}

TEST_CASE("docs/problems.md has one chapter for each code, in the order of the guide") {
  std::vector<std::string> headings;
  for (const Chapter& chapter : chapters()) headings.push_back(chapter.code);
  CHECK(headings == codes_of_guide());
}

TEST_CASE("docs/problems.md and the program tell the same cause and cure") {
  const std::vector<Chapter> all = chapters();
  REQUIRE_FALSE(all.empty());
  for (const Chapter& chapter : all) {
    INFO(chapter.code);
    const std::string cause = chapter.told("Cause"), cure = chapter.told("Cure");
    CHECK_FALSE(cause.empty());
    CHECK_FALSE(cure.empty());
    CHECK(explanation_of(chapter.code) ==
          chapter.code + "\n  cause: " + cause + "\n  cure:  " + cure + "\n");
  }
}

std::string hint_for(std::string_view code) {
  try {
    (void)explanation_of(code);
  } catch (const UsageError& error) {
    CHECK(error.problem().code == "explain.unknown");
    CHECK(error.problem().where == code);
    return error.problem().hint;
  }
  FAIL("an unknown code was explained: " << code);
  return {};
}

TEST_CASE("an unknown code is answered with the codes of its family, else with all") {
  const std::string family = hint_for("paper.small");
  CHECK(family.find("paper.too_small") != std::string::npos);
  CHECK(family.find("paper.unknown") != std::string::npos);
  CHECK(family.find("client.") == std::string::npos);
  const std::string all = hint_for("fish");
  for (const std::string& code : each(codes_of_guide())) CHECK(all.find(code) != std::string::npos);
}

}  // namespace
}  // namespace blockwright
