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
constexpr const char* kCode =
    "(client|measure|job|file|paper|check|draft|dart|style|fit|garment|batch|pattern|schema|"
    "explain|"
    "input|program|tape|write)\\.[a-z_]+";

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

/// The part of docs/problems.md under one heading, which names one code or several.
struct Chapter {
  std::vector<std::string> codes;
  std::string text;

  /// The paragraph that begins with the word in bold, without it, on one line.
  [[nodiscard]] std::string paragraph(const std::string& word) const {
    const std::string begin = "**" + word + ".** ";
    const std::size_t at = text.find(begin);
    if (at == std::string::npos) return {};
    const std::size_t from = at + begin.size();
    std::string line = text.substr(from, text.find("\n\n", from) - from);
    line = line.substr(0, line.find_last_not_of('\n') + 1);
    std::replace(line.begin(), line.end(), '\n', ' ');
    return line;
  }
};

std::vector<Chapter> chapters() {
  std::vector<Chapter> all;
  std::istringstream page(text_of(kRoot / "docs/problems.md"));
  for (std::string line; std::getline(page, line);) {
    if (line.starts_with("## ")) {
      all.push_back({matches(line, kCode, 0), ""});
    } else if (!all.empty()) {
      all.back().text += line + "\n";
    }
  }
  return all;
}

std::vector<std::string> codes_explained() {
  std::vector<std::string> codes;
  for (const Chapter& chapter : chapters()) {
    codes.insert(codes.end(), chapter.codes.begin(), chapter.codes.end());
  }
  return codes;
}

bool is_source(const fs::path& path) {
  return path.extension() == ".cpp" || path.extension() == ".hpp";
}

std::string sources_in(const std::string& folder) {
  std::string all;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
    if (entry.is_regular_file() && is_source(entry.path())) all += text_of(entry.path());
  }
  return all;
}

/// Every code that the sources have in quotes, or in the brackets of a printed problem.
std::set<std::string> codes_in_quotes() {
  const auto found = matches(sources_in("src"), "[\"\\[](" + std::string(kCode) + ")[\"\\]]", 1);
  return {found.begin(), found.end()};
}

/// What the one JSON reader puts behind the name of a file kind, in these files.
std::vector<std::string> reader_endings(const std::string& sources) {
  return matches(sources, "code\\(\"([a-z]+)\"\\)", 1);
}

/// The codes that the JSON reader may raise, for every kind of file that is read with it.
std::set<std::string> codes_of_reader(const std::vector<std::string>& endings) {
  std::set<std::string> codes;
  for (const std::string& kind : matches(sources_in("src"), "\\.codes = \"([a-z]+)\"", 1)) {
    for (const std::string& ending : endings) codes.insert(kind + "." + ending);
  }
  return codes;
}

TEST_CASE("every problem code that the program raises is explained, and no other") {
  const std::vector<std::string> list = codes_explained();
  const std::set<std::string> explained(list.begin(), list.end());
  CHECK(explained.size() > 30);
  CHECK(explained.size() == list.size());
  const std::set<std::string> may_be_raised = codes_of_reader(reader_endings(sources_in("src")));
  std::set<std::string> known = codes_in_quotes();
  for (const std::string& code : known) {
    INFO(code);
    CHECK(explained.contains(code));
  }
  known.insert(may_be_raised.begin(), may_be_raised.end());
  for (const std::string& code : explained) {
    INFO(code);
    CHECK(known.contains(code));
  }
}

TEST_CASE("what any JSON file may be refused for is explained for every kind of file") {
  const auto endings = reader_endings(text_of(kRoot / "src/text/json/json_builder.cpp") +
                                      text_of(kRoot / "src/text/json/json_document.cpp"));
  const std::set<std::string> codes = codes_of_reader(endings);
  CHECK(codes.contains("client.syntax"));
  CHECK(codes.contains("style.duplicate"));
  for (const std::string& code : codes) {
    INFO(code);
    CHECK_NOTHROW(explanation_of(code));
  }
}

TEST_CASE("the chapters of docs/problems.md are in alphabetical order") {
  std::vector<std::string> first;
  for (const Chapter& chapter : chapters()) first.push_back(chapter.codes.at(0));
  CHECK(std::is_sorted(first.begin(), first.end()));
}

TEST_CASE("the program tells cause and cure as docs/problems.md does") {
  const std::vector<Chapter> all = chapters();
  REQUIRE_FALSE(all.empty());
  for (const Chapter& chapter : all) {
    const std::string cause = chapter.paragraph("Cause"), cure = chapter.paragraph("Cure");
    for (const std::string& code : chapter.codes) {
      INFO(code);
      CHECK_FALSE(cause.empty());
      CHECK_FALSE(cure.empty());
      CHECK(explanation_of(code) == code + "\n  cause: " + cause + "\n  cure:  " + cure + "\n");
    }
  }
}

TEST_CASE("the kinds of files named by schema.unknown are those that have a schema") {
  for (const std::string name : {"client", "job", "pattern", "report", "style"}) {
    INFO(name);
    CHECK(explanation_of("schema.unknown").find(name) != std::string::npos);
  }
}

std::string hint_for(std::string_view code) {
  try {
    (void)explanation_of(code);
  } catch (const UsageError& error) {
    CHECK(error.problem().code == "explain.unknown");
    CHECK(error.problem().where == code);
    return error.problem().hint.plain();
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
  for (const std::string& code : each(codes_explained()))
    CHECK(all.find(code) != std::string::npos);
}

}  // namespace
}  // namespace blockwright
