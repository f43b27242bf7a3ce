// docs/security.md names the tests that show what it promises; they must be there.
#include "support/run_tool.hpp"

#include <catch2/catch.hpp>

#include <regex>

namespace security_doc_test {

using namespace blockwright_tests;

namespace {

const std::string kRoot = BLOCKWRIGHT_SOURCE_DIR;

/// Line ends and indents as one space; texts in two pieces as one.
std::string in_one_line(const std::string& text) {
  const std::string line = std::regex_replace(text, std::regex("\\s+"), " ");
  return std::regex_replace(line, std::regex("\" \""), "");
}

/// All that the pattern finds. The text must outlive it.
std::vector<std::smatch> matches(const std::string& text, const std::string& pattern) {
  const std::regex regex(pattern);
  return {std::sregex_iterator(text.begin(), text.end(), regex), std::sregex_iterator()};
}

}  // namespace

TEST_CASE("docs/security.md names tests that there are") {
  const std::string doc = in_one_line(read_bytes(kRoot + "/docs/security.md"));
  int named = 0;
  for (const std::smatch& file : matches(doc, "`(tests/[a-z_/]+\\.cpp)`: ((\\*[^*]+\\*[^*`]*)+)")) {
    const std::string source = in_one_line(read_bytes(kRoot + "/" + file[1].str()));
    const std::string names = file[2].str();
    for (const std::smatch& test : matches(names, "\\*([^*]+)\\*")) {
      INFO(file[1].str() << ": " << test[1].str());
      CHECK(source.find("\"" + test[1].str() + "\"") != std::string::npos);
      ++named;
    }
  }
  CHECK(named >= 25);
}

}  // namespace security_doc_test
