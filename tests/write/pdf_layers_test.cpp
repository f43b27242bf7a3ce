#include "support/picture.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

using namespace blockwright_tests;
using nlohmann::json;

namespace {

constexpr double kDpi = 60;

/// One bar for each layer, side by side, on one page.
PrintPlan bars() {
  Sheet sheet{120, 60, {}, {}};
  double x = 10;
  for (const SheetLayer layer : {SheetLayer::Cut, SheetLayer::Stitch, SheetLayer::Marks,
                                 SheetLayer::Text, SheetLayer::Previous}) {
    sheet.strokes.push_back(line({x, 10}, {x, 50}, LineRole::CutLine, layer));
    x += 20;
  }
  return whole_plan(sheet);
}

bool bar_is_drawn(const Picture& picture, int layer) {
  const double x = 10.0 + 20.0 * layer;
  return picture.ink({x - 5, 5, x + 5, 55}) > 1.0;
}

Picture drawn_by_mutool(const PdfFile& file, const std::string& options) {
  const TempFolder folder;
  const std::string path = folder.path("page.pgm");
  const ToolResult drawn =
      run_tool("mutool draw -q -r 60 -F pgm -o " + path + " " + options + " " + file.path());
  REQUIRE(drawn.exit_code == 0);
  return Picture::read(path, kDpi, 60);
}

}  // namespace

TEST_CASE("viewers show the five layers in order, the previous version off") {
  const PdfFile file(sample_plan());
  const json properties = file.catalog().at("/OCProperties");
  const std::vector<std::string> expected = {"cut line", "stitch line", "marks and grain", "text",
                                             "previous version"};
  std::vector<std::string> names;
  for (const json& group : properties.at("/D").at("/Order")) {
    names.push_back(text_of(file.follow(group).at("/Name")));
  }
  CHECK(names == expected);
  CHECK(properties.at("/OCGs") == properties.at("/D").at("/Order"));
  REQUIRE(properties.at("/D").at("/OFF").size() == 1);
  CHECK(text_of(file.follow(properties.at("/D").at("/OFF").at(0)).at("/Name")) ==
        "previous version");
}

// With /Usage entries some viewers list a layer as switched but draw the page unchanged.
TEST_CASE("layers carry no usage entries") {
  const PdfFile file(sample_plan());
  const std::string all = json(file.dictionaries()).dump();
  REQUIRE(all.find("/OCG") != std::string::npos);
  CHECK(all.find("/Usage") == std::string::npos);
  CHECK(all.find("/AS\"") == std::string::npos);
}

TEST_CASE("poppler and mupdf draw every layer but the previous version") {
  const PdfFile file(bars());
  const Picture poppler = page_picture(file.path(), 1, kDpi, 60);
  const Picture mupdf = drawn_by_mutool(file, "");
  for (int layer = 0; layer < 5; ++layer) {
    INFO(layer);
    CHECK(bar_is_drawn(poppler, layer) == (layer < 4));
    CHECK(bar_is_drawn(mupdf, layer) == (layer < 4));
  }
}

TEST_CASE("each layer can be switched by itself") {
  const PdfFile file(bars());
  const int switched = GENERATE(0, 1, 2, 3, 4);
  const bool hide = switched < 4;
  const Picture picture =
      drawn_by_mutool(file, (hide ? "-z " : "-Z ") + std::to_string(switched + 1));
  for (int layer = 0; layer < 5; ++layer) {
    INFO("switched " << switched << ", layer " << layer);
    const bool shown_at_first = layer < 4;
    CHECK(bar_is_drawn(picture, layer) == (shown_at_first != (layer == switched)));
  }
}

TEST_CASE("frames and labels of a page print whatever layer is off") {
  const PdfFile file(sample_plan());
  const TempFolder folder;
  const std::string path = folder.path("page.pgm");
  REQUIRE(run_tool("mutool draw -q -r 60 -F pgm -z 1 -z 2 -z 3 -z 4 -o " + path + " " +
                   file.path() + " 2")
              .exit_code == 0);
  const Picture picture = Picture::read(path, kDpi, 297);
  CHECK(picture.ink({8, 20, 12, 280}) > 10.0);    // left side of the frame
  CHECK(picture.ink({11, 11, 25, 20}) > 1.0);     // the label "A1"
  CHECK(picture.ink({15, 30, 195, 280}) == 0.0);  // nothing of the sheet
}
