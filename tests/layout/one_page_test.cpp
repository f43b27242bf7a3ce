#include "blockwright/base/error.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

SheetNotes notes_of(int lines) {
  SheetNotes notes;
  notes.client = "Teodor Brandt";
  notes.session = "2026-02-01";
  for (int i = 0; i < lines; ++i) {
    notes.cautions.push_back("caution" + std::to_string(i) + ", to be read before cutting");
    notes.estimated.push_back("estimate" + std::to_string(i));
  }
  return notes;
}

PrintPlan plan_for(const std::string& paper, const SheetNotes& notes) {
  PrintOptions options;
  options.paper = paper_named(paper);
  TextFonts fonts;
  return one_page(lay_out(sample_pattern(), options, notes), fonts);
}

}  // namespace

TEST_CASE("one page holds the whole drawing, squares and notes beside it, inside the margins") {
  for (const std::string paper : {"a0", "a1", "roll:914", "roll:610", "roll:841", "900x700"}) {
    for (const int lines : {2, 40}) {
      INFO(paper << " with " << lines << " lines");
      const PrintPlan plan = plan_for(paper, notes_of(lines));
      REQUIRE(plan.pages.size() == 1);
      const Page& page = plan.pages.front();
      REQUIRE(page.window);
      const Box drawn = drawn_box(plan.sheet);
      CHECK(page.window->left <= drawn.left);
      CHECK(page.window->right >= drawn.right);
      CHECK(page.window->bottom <= drawn.bottom);
      CHECK(page.window->top >= drawn.top);
      const Box shown = {page.window_at.x, page.window_at.y,
                         page.window_at.x + page.window->width(),
                         page.window_at.y + page.window->height()};
      const Box furniture = drawn_box(page.furniture);
      CHECK(!shown.overlaps(furniture));
      for (const Box& box : each({shown, furniture})) {
        CHECK(box.left >= 10.0 - 1e-6);
        CHECK(box.bottom >= 10.0 - 1e-6);
        CHECK(box.right <= page.width - 10.0 + 1e-6);
        CHECK(box.top <= page.height - 10.0 + 1e-6);
      }
      const auto squares = strokes_of(page.furniture, LineRole::TestSquare);
      REQUIRE(squares.size() == 2);
      CHECK(std::any_of(squares.begin(), squares.end(),
                        [](const Stroke* s) { return is_square(*s, 100.0); }));
      CHECK(std::any_of(squares.begin(), squares.end(),
                        [](const Stroke* s) { return is_square(*s, 101.6); }));
      CHECK(text_in_the_way(page.furniture) == "");
    }
  }
}

// Also on papers that are long enough one way and too short the other.
TEST_CASE("a sheet takes all of the drawing and its squares or is refused, whatever its shape") {
  int taken = 0, refused = 0;
  for (int width = 300; width <= 1000; width += 50) {
    for (int height = 300; height <= width; height += 50) {
      const std::string paper = std::to_string(width) + "x" + std::to_string(height);
      INFO(paper);
      try {
        const PrintPlan plan = plan_for(paper, notes_of(2));
        const Page& page = plan.pages.front();
        const Box furniture = drawn_box(page.furniture);
        CHECK(page.window_at.x >= 10.0 - 1e-6);
        CHECK(page.window_at.y >= 10.0 - 1e-6);
        CHECK(page.window_at.x + page.window->width() <= page.width - 10.0 + 1e-6);
        CHECK(page.window_at.y + page.window->height() <= page.height - 10.0 + 1e-6);
        CHECK(furniture.right <= page.width - 10.0 + 1e-6);
        CHECK(furniture.bottom >= 10.0 - 1e-6);
        ++taken;
      } catch (const UsageError&) {
        ++refused;
      }
    }
  }
  CHECK(taken > 10);
  CHECK(refused > 10);
}

TEST_CASE("a roll's page is as wide as the roll and as long as needed") {
  const Page upright = plan_for("roll:914", notes_of(2)).pages.front();
  CHECK(upright.width == 914.0);
  CHECK(upright.height < 700.0);
  const Page along = plan_for("roll:610", notes_of(2)).pages.front();
  CHECK(std::min(along.width, along.height) == Approx(610.0));
}

TEST_CASE("the notes are all there, however long, or the page says which are missing") {
  const auto said = [](const PrintPlan& plan, int lines) {
    const std::string text = all_text(plan.pages.front().furniture);
    int found = 0;
    for (int i = 0; i < lines; ++i) {
      found += text.find("caution" + std::to_string(i) + ",") != std::string::npos ? 1 : 0;
    }
    return found;
  };
  CHECK(said(plan_for("a0", notes_of(60)), 60) == 60);
  const PrintPlan crowded = plan_for("roll:914", notes_of(1500));
  CHECK(said(crowded, 1500) < 1500);
  std::string text = all_text(crowded.pages.front().furniture);
  std::ranges::replace(text, '\n', ' ');
  const std::size_t at = text.find("No room here for ");
  REQUIRE(at != std::string::npos);
  // One of them may have begun.
  const int missing = std::stoi(text.substr(at + std::string("No room here for ").size()));
  CHECK((missing == 1500 - said(crowded, 1500) || missing == 1501 - said(crowded, 1500)));
  CHECK(text.find(" of \"Look at these before you cut\", all of \"Pieces\"") != std::string::npos);
}

TEST_CASE("pieces that do not fit are refused with what they need") {
  for (const std::string paper : {"a4", "a3", "roll:297"}) {
    try {
      plan_for(paper, notes_of(2));
      FAIL(paper << " was accepted");
    } catch (const UsageError& error) {
      CHECK(error.problem().code == "paper.too_small");
      CHECK(error.problem().message.plain().find(paper) != std::string::npos);
      CHECK(error.problem().message.plain().find("mm") != std::string::npos);
      CHECK(!error.problem().hint.empty());
    }
  }
}
