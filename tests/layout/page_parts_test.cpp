// What single pages hold: notes, titles, the small square.
#include "blockwright/geometry/intersections.hpp"
#include "blockwright/geometry/path.hpp"
#include "pages.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

Layout layout_on(const std::string& paper, std::size_t notes, double size = 1.0) {
  PrintOptions options;
  options.paper = paper_named(paper);
  SheetNotes words;
  words.client = "Ondine Marsh";
  words.session = "2026-03-14";
  for (std::size_t i = 0; i < notes; ++i) words.ease.push_back("note " + std::to_string(i));
  return lay_out(scaled(sample_pattern(), size), options, words);
}

std::vector<Page> maps_of(const Tiling& tiling, std::size_t notes, TextFonts& fonts) {
  return map_pages(tiling, layout_on("a4", notes), fonts);
}

double height_of(const Page& page, const std::string& text) {
  const auto found = std::ranges::find(page.furniture.texts, text, &SheetText::text);
  REQUIRE(found != page.furniture.texts.end());
  return found->height;
}

bool drawn_inside(const Sheet& sheet, const Box& box) {
  return std::ranges::any_of(sheet.strokes, [&](const Stroke& stroke) {
    return std::ranges::any_of(flattened(stroke.path, 0.05),
                               [&](Point p) {
                                 return p.x > box.left && p.x < box.right && p.y > box.bottom &&
                                        p.y < box.top;
                               }) ||
           !intersections(stroke.path, rectangle(box)).empty();
  });
}

}  // namespace

TEST_CASE("notes are set smaller, down to four fifths, before they open a second map page") {
  TextFonts fonts;
  const Tiling tiling = choose_tiling(layout_on("a4", 1));
  const double usual = height_of(maps_of(tiling, 1, fonts).front(), "note 0");
  CHECK(usual == Approx(3.2));
  std::size_t most = 1, over = 2;
  while (maps_of(tiling, over, fonts).size() == 1) over *= 2;
  for (most = over / 2; over - most > 1;) {
    const std::size_t middle = (most + over) / 2;
    (maps_of(tiling, middle, fonts).size() == 1 ? most : over) = middle;
  }
  CHECK(height_of(maps_of(tiling, most, fonts).front(), "note 0") == Approx(0.8 * usual));
  // Where that does not save a page either, nothing is gained by small letters.
  const auto two = maps_of(tiling, over, fonts);
  CHECK(two.size() == 2);
  CHECK(height_of(two.front(), "note 0") == Approx(usual));
}

TEST_CASE("a further map page says that it goes on, and which it is; the first does not") {
  TextFonts fonts;
  const auto pages = maps_of(choose_tiling(layout_on("a4", 1)), 400, fonts);
  REQUIRE(pages.size() > 2);
  CHECK(all_text(pages[0].furniture).find("continued") == std::string::npos);
  for (std::size_t i = 1; i < pages.size(); ++i) {
    const std::string more = ", continued (map " + std::to_string(i + 1) + ")";
    CHECK(all_text(pages[i].furniture).find(more) != std::string::npos);
  }
}

namespace {

// The small square of a page, on the sheet.
Box small_square(const Page& page) {
  const auto squares = strokes_of(page.furniture, LineRole::TestSquare);
  REQUIRE(squares.size() == 1);
  const Vec to_sheet = Point{page.window->left, page.window->bottom} - page.window_at;
  return box_of(placed(squares.front()->path, Placement::shift(to_sheet)));
}

Box grown(const Box& box, double by) {
  return {box.left - by, box.bottom - by, box.right + by, box.top + by};
}

// The rooms of a label's lines, from the first to the last, and what lies between them.
std::vector<Box> labels_of(const Sheet& sheet) {
  std::vector<Box> labels;
  for (std::size_t i = 0; i < sheet.texts.size(); ++i) {
    const SheetText& text = sheet.texts[i];
    const bool goes_on = i > 0 && sheet.texts[i - 1].piece == text.piece &&
                         sheet.texts[i - 1].at.x == text.at.x && text.turn == Angle();
    if (!goes_on) labels.emplace_back();
    labels.back().include(box_of(room_of(text)));
  }
  return labels;
}

bool is_blank(const Sheet& sheet, const Box& box) {
  return !drawn_inside(sheet, box) &&
         std::ranges::none_of(labels_of(sheet), [&](const Box& b) { return b.overlaps(box); });
}

}  // namespace

TEST_CASE("the small square is inset by the overlap, with 2 mm of clear paper round it") {
  int squares = 0, in_corner = 0;
  for (const std::string paper : {"a4", "letter", "a3", "a2"}) {
    for (const double size : {0.8, 1.0, 1.3}) {
      TextFonts fonts;
      const PrintPlan plan = tile(layout_on(paper, 2, size), fonts);
      for (const Page& page : plan.pages) {
        if (!page.window) continue;
        INFO(paper << " size " << size << ", page " << page.label);
        const Box square = small_square(page);
        CHECK(is_blank(plan.sheet, grown(square, 1.9)));
        ++squares;
        const double left = page.window->left + 10.0 + 2.0, top = page.window->top - 10.0 - 2.0;
        if (!is_blank(plan.sheet, grown(Box{left, top - 20.0, left + 20.0, top}, 4.0))) continue;
        ++in_corner;
        CHECK(square.left == Approx(left));
        CHECK(square.top == Approx(top));
      }
    }
  }
  CHECK(squares > 40);
  CHECK(in_corner > 20);
}

TEST_CASE("nothing of a page's own goes between the lines of a label") {
  int labels = 0;
  for (const std::string paper : {"a4", "letter", "150x150"}) {
    TextFonts fonts;
    const PrintPlan plan = tile(layout_on(paper, 2), fonts);
    for (const Page& page : plan.pages) {
      if (!page.window) continue;
      const Vec to_sheet = Point{page.window->left, page.window->bottom} - page.window_at;
      for (const Box& label : labels_of(plan.sheet)) {
        if (!label.overlaps(*page.window)) continue;
        ++labels;
        INFO(paper << ", page " << page.label);
        CHECK_FALSE(label.overlaps(small_square(page)));
        for (const SheetText& text : page.furniture.texts) {
          const Box room = box_of(placed(room_of(text), Placement::shift(to_sheet)));
          CHECK_FALSE(label.overlaps(room));
        }
      }
    }
  }
  CHECK(labels > 10);
}

TEST_CASE("pages on the map are named in letters of 2 mm or more") {
  for (const std::string paper : {"a4", "a3", "letter"}) {
    TextFonts fonts;
    const PrintPlan plan = tile(layout_on(paper, 2), fonts);
    for (const Page& page : plan.pages) {
      if (page.window) CHECK(height_of(plan.pages.front(), page.label) >= 2.0);
    }
  }
}

TEST_CASE("a label lies near the middle of its piece, where it is looked for") {
  for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
    Layout layout = layout_on("a4", 2);
    layout = lay_out(sample_pattern(), {.cut = cut, .paper = layout.options.paper}, layout.notes);
    TextFonts fonts;
    const Sheet sheet = sheet_of(layout, fonts);
    for (const LaidPiece& laid : layout.pieces) {
      INFO(laid.piece.name);
      const Box piece = box_of(placed(flat_outline(laid.piece), Placement::shift(laid.at)));
      Box label;
      for (const SheetText& text : sheet.texts) {
        const bool of_label = text.text == "Ondine Marsh" || text.text == "session 2026-03-14";
        if (text.piece == laid.piece.name && of_label) label.include(box_of(room_of(text)));
      }
      REQUIRE_FALSE(label.empty());
      const double x = (0.5 * (label.left + label.right) - piece.left) / piece.width();
      const double y = (0.5 * (label.bottom + label.top) - piece.bottom) / piece.height();
      CAPTURE(x, y);
      CHECK(std::abs(x - 0.5) < 0.2);
      CHECK(std::abs(y - 0.5) < 0.25);
    }
  }
}

TEST_CASE("a layout without pieces is no page") {
  TextFonts fonts;
  PrintOptions options;
  options.paper = paper_named("a0");
  const Layout empty = lay_out({}, options, {});
  CHECK_THROWS_AS(tile(empty, fonts), std::logic_error);
  CHECK_THROWS_AS(one_page(empty, fonts), std::logic_error);
}

TEST_CASE("the notes say what to look at first, but not on a sheet that is not for cutting") {
  Layout layout = layout_on("a4", 1);
  layout.notes.look_first = {"dart shorter: a dart's point pokes"};
  const auto says = [&](const std::string& text) {
    return std::ranges::count(note_paragraphs(layout, NotesFor::JoinedPages), text,
                              &Paragraph::text);
  };
  CHECK(says("Look at these first on this toile") == 1);
  CHECK(says("dart shorter: a dart's point pokes") == 1);
  layout.notes.to_look_at = "how far the lines could be off";
  CHECK(says("Look at these first on this toile") == 0);
}
