#include "blockwright/base/printable.hpp"
#include "blockwright/write/writers.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <random>
#include <sstream>

using namespace blockwright_tests;

namespace {

/// A drawing where every name and text is the given one.
Sheet sheet_named(const std::string& name) {
  Sheet sheet{200, 60, {}, {label({10, 20}, name)}};
  Stroke stroke = line({5, 5}, {15, 15}, LineRole::CutLine, SheetLayer::Cut);
  stroke.piece = name;
  stroke.name = name;
  sheet.strokes = {stroke, stroke};
  sheet.texts[0].piece = name;
  return sheet;
}

PrintPlan plan_named(const std::string& name) {
  PrintPlan plan = whole_plan(sheet_named(name));
  plan.title = name;
  plan.pages[0].label = name;
  plan.pages[0].furniture.texts = {label({10, 40}, name)};
  return plan;
}

Pattern pattern_named(const std::string& name) {
  Piece piece{name, {{name, EdgeRole::Seam, Path::through({{0, 0}, {1, 1}})}},
              {},   {{name, name, 0.5, 1, name, name}},
              {},   {{name, {1, 2}}},
              {},   CutOn::Fold};
  return {{piece}, {{name, {{name, name}}, {{name, name}}, 0.0}}};
}

void check_svg(const std::string& name) {
  const TempFolder folder;
  const std::string svg = svg_bytes(sheet_named(name), name);
  const ToolResult lint = run_tool("xmllint --noout " + folder.write("sheet.svg", svg));
  INFO(lint.output);
  CHECK(lint.exit_code == 0);
  CHECK(lint.output.empty());
  CHECK(svg.find("<script") == std::string::npos);
}

void check_pdf(const std::string& name) {
  const PdfFile file(plan_named(name));
  const ToolResult check = run_tool("qpdf --check " + file.path());
  INFO(check.output);
  CHECK(check.exit_code == 0);
  const ToolResult drawn = run_tool("mutool draw -q -r 20 -F pgm -o /dev/null " + file.path());
  INFO(drawn.output);
  CHECK(drawn.output.find("error") == std::string::npos);
  const std::string shown = run_tool("pdfinfo -enc UTF-8 " + file.path()).output;
  CHECK(shown == printable_lines(shown));  // the title among it
  const TempFolder folder;
  const std::string xmp = run_tool("pdfinfo -meta " + file.path()).output;
  CHECK(run_tool("xmllint --noout " + folder.write("meta.xml", xmp)).output.empty());
  CHECK(run_tool("pdftotext " + file.path() + " -").exit_code == 0);
}

void check_json(const std::string& name) {
  std::ostringstream out;
  write_pattern_json(out, pattern_named(name));
  const auto file = nlohmann::json::parse(out.str());
  CHECK(file.at("pieces").at(0).at("edges").size() == 1);
  CHECK(file.at("seams").size() == 1);
}

void check_all(const std::string& name) {
  CAPTURE(name);
  check_svg(name);
  check_pdf(name);
  check_json(name);
}

}  // namespace

TEST_CASE("no name can harm a drawing, a print or a pattern file") {
  REQUIRE(nasty_names().size() > 15);
  for (const std::string& name : nasty_names()) check_all(name);
}

TEST_CASE("random bytes as names are harmless") {
  std::mt19937 random(20260314);
  for (int round = 0; round < 25; ++round) {
    std::string name;
    const auto size = random() % 60;
    for (unsigned i = 0; i < size; ++i) name += static_cast<char>(random() & 0xFF);
    check_all(name);
  }
}

TEST_CASE("letters reach a drawing as they are, and what is not printable is escaped") {
  const std::string svg =
      svg_bytes({100, 100, {}, {label({5, 5}, "Zażółć\x01日本\xFF🧵\tx")}});
  CHECK(svg.find("Zażółć\\u0001日本\\xff🧵\\tx</text>") != std::string::npos);
}

TEST_CASE("a name of 300 letters keeps ids short") {
  const std::string svg = svg_bytes(sheet_named(std::string(300, 'w')));
  std::size_t longest = 0;
  for (std::size_t at = svg.find(" id=\""); at != std::string::npos;
       at = svg.find(" id=\"", at + 1)) {
    longest = std::max(longest, svg.find('"', at + 5) - at - 5);
  }
  CHECK(longest > 0);
  CHECK(longest < 100);
}
