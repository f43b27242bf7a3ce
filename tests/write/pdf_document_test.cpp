#include "blockwright/base/version.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace blockwright_tests;
using nlohmann::json;

namespace {

/// The page's width and height in points.
std::pair<double, double> size_in_points(const json& page) {
  const json& box = page.at("/MediaBox");
  const double unit = page.value("/UserUnit", 1.0);
  REQUIRE(box.at(0) == 0);
  REQUIRE(box.at(1) == 0);
  return {unit * box.at(2).get<double>(), unit * box.at(3).get<double>()};
}

PrintPlan plan_of_size(double width, double height) {
  return whole_plan(
      {width, height, {line({1, 1}, {9, 9}, LineRole::CutLine, SheetLayer::Cut)}, {}});
}

bool has_key_anywhere(const PdfFile& file, const std::string& key) {
  const auto dictionaries = file.dictionaries();
  REQUIRE(!dictionaries.empty());
  return std::any_of(dictionaries.begin(), dictionaries.end(), [&](const json& object) {
    return object.dump().find(key) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("qpdf, mutool and pdfinfo find nothing wrong with a PDF") {
  const PdfFile file(sample_plan());
  const ToolResult check = run_tool("qpdf --check " + file.path());
  INFO(check.output);
  CHECK(check.exit_code == 0);
  const ToolResult drawn = run_tool("mutool draw -q -o /dev/null -F pgm " + file.path());
  CHECK(drawn.output.find("error") == std::string::npos);
  const ToolResult info = run_tool("pdfinfo " + file.path());
  CHECK(info.output.find("PDF version:     1.7") != std::string::npos);
  CHECK(info.output.find("Pages:           7") != std::string::npos);
}

// Check values: facts of print scale, mm to points (72 to the inch of 25.4 mm).
TEST_CASE("a page's size in points is its size on paper") {
  struct Scale {
    double mm;
    double points;
  };
  const auto [mm, points] = GENERATE(
      Scale{100, 283.464567}, Scale{210, 595.275591}, Scale{297, 841.889764}, Scale{215.9, 612.0},
      Scale{279.4, 792.0}, Scale{355.6, 1008.0}, Scale{431.8, 1224.0});
  const auto [width, height] = size_in_points(PdfFile(plan_of_size(mm, 150.0)).pages().at(0));
  CHECK(std::abs(width - points) <= 1e-4);
  CHECK(std::abs(height - 425.196850) <= 1e-4);
}

// ISO 32000-1, annex C: pages of more than 14400 units need not be read.
TEST_CASE("very long rolls use bigger units and keep their size") {
  const json page = PdfFile(plan_of_size(914.0, 12000.0)).pages().at(0);
  const auto [width, height] = size_in_points(page);
  CHECK(page.at("/MediaBox").at(3).get<double>() <= 14400.0);
  CHECK(page.at("/UserUnit") == 3);
  CHECK(std::abs(width - 914.0 * 72.0 / 25.4) <= 3e-4);
  CHECK(std::abs(height - 12000.0 * 72.0 / 25.4) <= 3e-4);
  CHECK(!PdfFile(plan_of_size(914.0, 5000.0)).pages().at(0).contains("/UserUnit"));
}

TEST_CASE("the print dialog starts at no scaling, the right paper, one side") {
  const json wishes = PdfFile(sample_plan()).catalog().at("/ViewerPreferences");
  CHECK(wishes.at("/PrintScaling") == "/None");
  CHECK(wishes.at("/PickTrayByPDFSize") == true);
  CHECK(wishes.at("/Duplex") == "/Simplex");
}

TEST_CASE("pages carry their labels, and the outline leads to each of them") {
  const PdfFile file(sample_plan());
  const std::vector<std::string> labels = {"map", "A1", "A2", "A3", "B1", "B2", "B3"};
  CHECK(file.page_labels() == labels);
  const json outline = file.follow(file.catalog().at("/Outlines"));
  CHECK(outline.at("/Count") == 7);
  json entry = file.follow(outline.at("/First"));
  for (std::size_t i = 0; i < labels.size(); ++i) {
    CAPTURE(i);
    CHECK(text_of(entry.at("/Title")) == labels[i]);
    CHECK(file.follow(entry.at("/Dest").at(0)) == file.pages().at(i));
    CHECK(entry.contains("/Next") == (i + 1 < labels.size()));
    if (entry.contains("/Next")) entry = file.follow(entry.at("/Next"));
  }
}

TEST_CASE("title and program are recorded, and no date") {
  PrintPlan plan = sample_plan();
  plan.title = "Łucja <&> (Łódź)";
  const PdfFile file(plan);
  CHECK(text_of(file.info().at("/Title")) == plan.title);
  const std::string program = "blockwright " + std::string(version());
  CHECK(text_of(file.info().at("/Producer")) == program);
  CHECK(!has_key_anywhere(file, "Date"));
  const TempFolder folder;
  const std::string xmp = run_tool("pdfinfo -meta " + file.path()).output;
  CHECK(run_tool("xmllint --noout " + folder.write("meta.xml", xmp)).output.empty());
  CHECK(xmp.find("Łucja &lt;&amp;&gt; (Łódź)") != std::string::npos);
  CHECK(xmp.find(program) != std::string::npos);
  CHECK(xmp.find("Date") == std::string::npos);
}

TEST_CASE("each layer of the sheet is stored once, whatever the number of pages") {
  const PdfFile file(sample_plan());
  int forms = 0;
  for (const json& object : file.dictionaries()) {
    if (object.is_object() && object.value("/Subtype", json()) == "/Form") ++forms;
  }
  CHECK(forms == 5);
  const std::size_t small = pdf_bytes(tiled_plan(sample_sheet(), 2, 2, 10.0)).size();
  const std::size_t large = pdf_bytes(tiled_plan(sample_sheet(), 8, 8, 10.0)).size();
  // The drawing itself takes more than 1000 bytes; a further page costs only its frame and labels.
  CHECK(large - small < 60 * 400);
}
