// The pages of docs/ against what they describe: each other, the built-in font and the drawings.
#include "support/program.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

using namespace blockwright_tests;

namespace {

namespace fs = std::filesystem;

const fs::path kRoot = BLOCKWRIGHT_SOURCE_DIR;

/// What the first group of the pattern catches.
std::vector<std::string> caught(const std::string& text, const std::string& pattern) {
  const std::regex regex(pattern, std::regex::multiline);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), regex), end; it != end; ++it) {
    found.push_back((*it)[1].str());
  }
  return found;
}

std::vector<fs::path> pages() {
  std::vector<fs::path> found{kRoot / "README.md", kRoot / "DEVELOPERS.md"};
  for (const char* folder : {"docs", "examples"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
      if (entry.path().extension() == ".md") found.push_back(entry.path());
    }
  }
  return found;
}

/// A heading as the part of a link behind '#'. Source: the slugs of the usual viewers of Markdown,
/// from memory.
std::string anchor_of(const std::string& heading) {
  std::string anchor;
  for (const char c : heading) {
    if (c == ' ') anchor += '-';
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '_') {
      anchor += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  return anchor;
}

std::set<std::string> anchors_in(const fs::path& page) {
  std::set<std::string> anchors;
  for (const std::string& heading : caught(read_bytes(page.string()), "^#+ (.*)$")) {
    anchors.insert(anchor_of(heading));
  }
  return anchors;
}

std::vector<std::string> links_in(const std::string& text) {
  std::vector<std::string> links = caught(text, R"(\]\(([^)\s]+)\))");
  for (const std::string& picture : caught(text, "src=\"([^\"]+)\"")) links.push_back(picture);
  return links;
}

std::string in_one_line(const std::string& text) {
  return std::regex_replace(text, std::regex("[>\\s]+"), " ");
}

/// The licence in the font's name table, in the platform encoding whose letters are bytes.
std::string licence_in_font() {
  const std::string font = read_bytes(BLOCKWRIGHT_FONT_FILE);
  const std::size_t begin =
      font.find("Copyright (c) 2003 by Bitstream, Inc. All Rights Reserved. B");
  const std::string last = "tavmjong @ free\n. fr.";
  const std::size_t end = font.find(last, begin);
  REQUIRE(begin != std::string::npos);
  REQUIRE(end != std::string::npos);
  return font.substr(begin, end + last.size() - begin);
}

}  // namespace

TEST_CASE("every link of the docs leads to a file and a heading, and every picture is shown") {
  std::set<fs::path> shown;
  int followed = 0;
  for (const fs::path& page : pages()) {
    for (const std::string& link : links_in(read_bytes(page.string()))) {
      if (link.starts_with("http")) continue;
      INFO(page.string() << ": " << link);
      const std::size_t hash = std::min(link.find('#'), link.size());
      const fs::path target =
          hash == 0 ? page : (page.parent_path() / link.substr(0, hash)).lexically_normal();
      CHECK(fs::exists(target));
      if (hash < link.size()) CHECK(anchors_in(target).contains(link.substr(hash + 1)));
      shown.insert(target);
      ++followed;
    }
  }
  CHECK(followed > 300);
  for (const auto& picture : fs::directory_iterator(kRoot / "docs/pictures")) {
    INFO(picture.path().string());
    CHECK(shown.contains(picture.path()));
  }
}

TEST_CASE("docs/LICENSE.md has both notices of the built-in font and the libraries compiled in") {
  const std::string page = in_one_line(read_bytes((kRoot / "docs/LICENSE.md").string()));
  // The two notices, paragraph by paragraph; lines of dashes under their headings are not quoted.
  const std::string licence = licence_in_font();
  int found = 0;
  for (std::size_t begin = 0; begin < licence.size();) {
    const std::size_t end = std::min(licence.find("\n\n", begin), licence.size());
    const std::string paragraph = in_one_line(licence.substr(begin, end - begin));
    begin = end + 2;
    if (paragraph.find("-----") != std::string::npos) continue;
    INFO(paragraph);
    CHECK(page.find(paragraph.substr(0, paragraph.find_last_not_of(' ') + 1)) != std::string::npos);
    ++found;
  }
  CHECK(found >= 14);
  for (const char* name : {"CLI11", "nlohmann-json", "fmt", "libqpdf", "HarfBuzz", "xxHash",
                           "polyclipping", "University of Cincinnati", "Niels Lohmann"}) {
    CHECK(page.find(name) != std::string::npos);
  }
}

TEST_CASE("docs/formats.md names every line that a drawing of the demo client has") {
  const std::string page = read_bytes((kRoot / "docs/formats.md").string());
  const std::string part =
      page.substr(page.find("\n## 4. SVG"), page.find("\n## 5. PDF") - page.find("\n## 4. SVG"));
  const TempFolder folder;
  std::set<std::string> names;
  for (const std::string cut : {"toile", "card", "net"}) {
    REQUIRE(call("draft " + kDemo + " --write svg --cut " + cut + " --out " + folder.path(""))
                .exit_code == 0);
    const std::string svg = read_bytes(folder.path("ondine-marsh-" + cut + ".svg"));
    for (const std::string& name : caught(svg, "<path[^>]*><title>([^<]*)</title>")) {
      names.insert(name);
    }
  }
  CHECK(names.contains("waist_line"));
  for (const std::string& name : names) {
    INFO(name);
    CHECK(part.find('`' + name + '`') != std::string::npos);
  }
}
