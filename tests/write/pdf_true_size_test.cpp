#include "support/each.hpp"
#include "support/picture.hpp"
#include "write/drawings.hpp"
#include "write/pdf_reading.hpp"

#include <catch2/catch.hpp>

using namespace blockwright_tests;

// The promise on paper: 0.1 mm. One dot of a 600 dpi printer is 0.042 mm.
namespace {

constexpr double kPromise = 0.1;
constexpr double kTrueDpi = 600;

Box round_about(Point p, double reach) {
  return {p.x - reach, p.y - reach, p.x + reach, p.y + reach};
}

/// Ten rings at odd places, some of them where tiles overlap.
const std::vector<Point>& marks() {
  static const std::vector<Point> kMarks = {
      {13.37, 287.11}, {95.123, 201.9}, {184.5, 250.05}, {186.02, 120.33}, {22.2, 33.3},
      {160.7, 31.234}, {250.25, 288.8}, {340.09, 171.7}, {365.4, 60.06},   {300.001, 29.9}};
  return kMarks;
}

Sheet sheet_of_marks() {
  Sheet sheet{380, 300, {}, {}};
  for (const Point mark : marks()) {
    sheet.strokes.push_back(circle(mark, 1.0, LineRole::Hole, SheetLayer::Marks));
  }
  return sheet;
}

/// Where a sheet point lies on the page.
Point on_page(const Page& page, Point p) {
  return page.window_at + (p - Point{page.window->left, page.window->bottom});
}

bool shows_whole(const Page& page, Point p) {
  const Box around = round_about(p, 2.0);
  return page.window && page.window->left < around.left && around.right < page.window->right &&
         page.window->bottom < around.bottom && around.top < page.window->top;
}

}  // namespace

TEST_CASE("marks lie within 0.1 mm of their place on every tile that shows them") {
  const PrintPlan plan = tiled_plan(sheet_of_marks(), 2, 2, 10.0);
  const PdfFile file(plan);
  std::vector<int> seen(marks().size(), 0);
  for (std::size_t i = 1; i < plan.pages.size(); ++i) {
    const Picture picture = page_picture(file.path(), static_cast<int>(i) + 1, kTrueDpi, 297);
    for (std::size_t k = 0; k < marks().size(); ++k) {
      if (!shows_whole(plan.pages[i], marks()[k])) continue;
      const Point expected = on_page(plan.pages[i], marks()[k]);
      INFO(plan.pages[i].label << " mark " << k);
      CHECK(distance(picture.dark_centre(round_about(expected, 2.0)), expected) < kPromise);
      ++seen[k];
    }
  }
  // Every mark was looked at, and those in the overlap on two neighbouring pages.
  for (const int times : each(seen)) CHECK(times >= 1);
  CHECK(std::count(seen.begin(), seen.end(), 2) >= 3);
}

TEST_CASE("a line that crosses the joint of two tiles goes on where it stopped") {
  Sheet sheet{380, 250, {}, {}};
  sheet.strokes.push_back(line({20, 100}, {360, 160}, LineRole::CutLine, SheetLayer::Cut));
  const PrintPlan plan = tiled_plan(sheet, 1, 2, 10.0);
  const PdfFile file(plan);
  const Box shared{plan.pages[2].window->left + 1, 0, plan.pages[1].window->right - 1, 250};
  REQUIRE(shared.width() == Approx(8.0));
  for (const std::size_t i : {std::size_t{1}, std::size_t{2}}) {
    const Picture picture = page_picture(file.path(), static_cast<int>(i) + 1, kTrueDpi, 297);
    const Point low = on_page(plan.pages[i], {shared.left, 100});
    const Point high = on_page(plan.pages[i], {shared.right, 200});
    const Point centre = picture.dark_centre({low.x, low.y, high.x, high.y});
    const double x = 0.5 * (shared.left + shared.right);
    const Point expected = on_page(plan.pages[i], {x, 100 + 60 * (x - 20) / 340});
    INFO(plan.pages[i].label);
    CHECK(distance(centre, expected) < kPromise);
  }
}

TEST_CASE("nothing of the sheet is drawn outside the window") {
  Sheet sheet{400, 300, {}, {}};
  sheet.strokes.push_back(line({0, 150}, {400, 150}, LineRole::CutLine, SheetLayer::Cut));
  sheet.strokes.push_back(line({100, 0}, {100, 300}, LineRole::CutLine, SheetLayer::Cut));
  const Page page{"A1", 210, 297, {}, Box{50, 100, 150, 200}, {40, 60}};
  const PdfFile file({"Window", sheet, {page}});
  const Picture picture = page_picture(file.path(), 1, 150, 297);
  CHECK(picture.ink({40, 60, 140, 160}) > 90.0);
  CHECK(picture.ink({0, 0, 210, 59}) == 0.0);
  CHECK(picture.ink({0, 161, 210, 297}) == 0.0);
  CHECK(picture.ink({0, 0, 39, 297}) == 0.0);
  CHECK(picture.ink({141, 0, 210, 297}) == 0.0);
}

TEST_CASE("the sides of a 100 mm test square are 100 mm apart") {
  const PdfFile file(tiled_plan(sheet_of_marks(), 1, 1, 10.0));
  const Picture picture = page_picture(file.path(), 1, kTrueDpi, 297);
  const auto x_of = [&](double x) { return picture.dark_centre({x - 1, 40, x + 1, 100}).x; };
  const auto y_of = [&](double y) { return picture.dark_centre({40, y - 1, 100, y + 1}).y; };
  CHECK(std::abs(x_of(120) - x_of(20) - 100.0) < kPromise);
  CHECK(std::abs(y_of(120) - y_of(20) - 100.0) < kPromise);
  CHECK(std::abs(x_of(20) - 20.0) < kPromise);
  CHECK(std::abs(y_of(20) - 20.0) < kPromise);
}

TEST_CASE("a page with bigger units is drawn at true size") {
  Sheet sheet{60, 6000, {}, {}};
  sheet.strokes = {circle({20, 30}, 1.0, LineRole::Hole, SheetLayer::Marks),
                   circle({20, 5970}, 1.0, LineRole::Hole, SheetLayer::Marks)};
  const PdfFile file(whole_plan(sheet));
  REQUIRE(file.pages().at(0).at("/UserUnit") == 2);
  // This viewer draws bare units, so at 200 of them to the inch the paper has 100 dots to the inch.
  const TempFolder folder;
  REQUIRE(run_tool("pdftoppm -r 200 -gray -singlefile " + file.path() + " " + folder.path("page"))
              .exit_code == 0);
  const Picture picture = Picture::read(folder.path("page.pgm"), 100, 6000);
  CHECK(distance(picture.dark_centre(round_about({20, 30}, 2.0)), {20, 30}) < kPromise);
  CHECK(distance(picture.dark_centre(round_about({20, 5970}, 2.0)), {20, 5970}) < kPromise);
}
