#include "blockwright/base/error.hpp"
#include "blockwright/geometry/curve.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

PrintOptions options_for(const std::string& paper, CutStyle cut = CutStyle::Toile) {
  PrintOptions options;
  options.cut = cut;
  options.paper = paper_named(paper);
  return options;
}

SheetNotes tiled_notes() {
  SheetNotes notes;
  notes.client = "Łucja Wiśniewska";
  notes.session = "2026-03-14";
  notes.version = "0.1.0";
  notes.ease = {"bust girth 5 cm", "waist girth 2.5 cm"};
  notes.estimated = {"scye depth (± 1.1 cm)"};
  notes.cautions = {"The waist girth was read twice, 3 cm apart."};
  return notes;
}

SheetNotes long_notes() {
  SheetNotes notes = tiled_notes();
  notes.client = std::string(300, 'W');
  for (int i = 0; i < 60; ++i) {
    const std::string n = std::to_string(i);
    notes.ease.push_back("easeline" + n + " 2 cm");
    notes.estimated.push_back("estimate" + n + " (± 1.2 cm), from the regressions");
    notes.cautions.push_back("caution" + n +
                             ": take this one again before you cut, in a good light");
  }
  return notes;
}

PrintPlan plan_for(const PrintOptions& options, const SheetNotes& notes, double size = 1.0) {
  TextFonts fonts;
  return tile(lay_out(scaled(sample_pattern(), size), options, notes), fonts);
}

const std::vector<std::string> kPapers = {"a4", "a3", "a2",      "letter",  "legal",
                                          "a1", "a0", "tabloid", "150x150", "180x400"};

std::vector<Page> tile_pages(const PrintPlan& plan) {
  std::vector<Page> pages;
  for (const Page& page : plan.pages) {
    if (page.window) pages.push_back(page);
  }
  return pages;
}

bool in(const Box& box, Point p) {
  const double slack = 1e-9;
  return p.x >= box.left - slack && p.x <= box.right + slack && p.y >= box.bottom - slack &&
         p.y <= box.top + slack;
}

bool in_some_window(const std::vector<Page>& pages, Point p) {
  return std::any_of(pages.begin(), pages.end(),
                     [&](const Page& page) { return in(*page.window, p); });
}

bool shows_something(const Sheet& sheet, const Box& window) {
  for (const Stroke& stroke : sheet.strokes) {
    for (double s = 0.0, whole = length(stroke.path, 1e-3); s <= whole; s += 0.5) {
      const Point p = point_at_length(stroke.path, s);
      if (p.x > window.left - 0.6 && p.x < window.right + 0.6 && p.y > window.bottom - 0.6 &&
          p.y < window.top + 0.6) {
        return true;
      }
    }
  }
  return std::any_of(sheet.texts.begin(), sheet.texts.end(),
                     [&](const SheetText& text) { return box_of(room_of(text)).overlaps(window); });
}

struct Place {
  int row, column;
};

Place place_of(const std::string& label) {
  return {label.front() - 'A', std::stoi(label.substr(1)) - 1};
}

const Page* page_at(const std::vector<Page>& pages, int row, int column) {
  for (const Page& page : pages) {
    const Place place = place_of(page.label);
    if (place.row == row && place.column == column) return &page;
  }
  return nullptr;
}

// Half a diamond on the sheet: the middle of its base, which lies on a page's edge, and where it
// points.
struct HalfDiamond {
  Point base;
  Vec towards;
};

std::vector<HalfDiamond> marks_on_sheet(const Page& page) {
  std::vector<HalfDiamond> marks;
  const Vec to_sheet = Point{page.window->left, page.window->bottom} - page.window_at;
  for (const Stroke* stroke : strokes_named(page.furniture, "match mark")) {
    const auto points = flattened(stroke->path, 0.1);
    REQUIRE(points.size() == 4);
    const Point base = midpoint(points[0], points[1]);
    marks.push_back({base + to_sheet, points[2] - base});
  }
  return marks;
}

}  // namespace

TEST_CASE("every point of every line lies in a window") {
  for (const std::string& paper : kPapers) {
    INFO(paper);
    const PrintPlan plan = plan_for(options_for(paper), tiled_notes());
    const auto pages = tile_pages(plan);
    int asked = 0;
    for (const Stroke& stroke : plan.sheet.strokes) {
      for (const Point p : flattened(stroke.path, 0.01)) {
        ++asked;
        REQUIRE(in_some_window(pages, p));
      }
    }
    for (const SheetText& text : plan.sheet.texts) {
      for (const Point p : flattened(room_of(text), 0.1)) REQUIRE(in_some_window(pages, p));
    }
    CHECK(asked > 500);
  }
}

TEST_CASE("windows lie inside the margins, are equal, and share exactly the overlap") {
  for (const std::string& paper : kPapers) {
    for (const double overlap : {10.0, 15.0, 0.0}) {
      INFO(paper << " overlap " << overlap);
      PrintOptions options = options_for(paper);
      options.overlap = Length::mm(overlap);
      options.margin = Length::mm(overlap == 15.0 ? 12.0 : 10.0);
      const auto pages = tile_pages(plan_for(options, tiled_notes()));
      const Box& first = *pages.front().window;
      for (const Page& page : pages) {
        const Box& w = *page.window;
        CHECK(page.window_at.x >= options.margin.mm());
        CHECK(page.window_at.y >= options.margin.mm());
        CHECK(page.window_at.x + w.width() <= page.width - options.margin.mm() + 1e-9);
        CHECK(page.window_at.y + w.height() <= page.height - options.margin.mm() + 1e-9);
        CHECK(w.width() == Approx(first.width()));
        CHECK(w.height() == Approx(first.height()));
        const Place at = place_of(page.label);
        if (const Page* right = page_at(pages, at.row, at.column + 1)) {
          CHECK(w.right - right->window->left == Approx(overlap).margin(1e-9));
          CHECK(w.top == Approx(right->window->top));
        }
        if (const Page* below = page_at(pages, at.row + 1, at.column)) {
          CHECK(below->window->top - w.bottom == Approx(overlap).margin(1e-9));
          CHECK(w.left == Approx(below->window->left));
        }
      }
    }
  }
}

TEST_CASE("pages have the paper's size, one way round or the other") {
  for (const std::string& paper : each(kPapers)) {
    const PrintOptions options = options_for(paper);
    for (const Page& page : plan_for(options, tiled_notes()).pages) {
      CHECK(std::min(page.width, page.height) == Approx(options.paper.shorter().mm()));
      CHECK(std::max(page.width, page.height) == Approx(options.paper.longer().mm()));
    }
  }
}

TEST_CASE("no page is blank, labels are unique and in reading order") {
  for (const std::string& paper : kPapers) {
    for (const double size : {0.6, 1.0, 1.3}) {
      INFO(paper << " size " << size);
      const PrintPlan plan = plan_for(options_for(paper), tiled_notes(), size);
      CHECK(plan.pages.front().label == "map");
      CHECK(!plan.pages.front().window);
      std::string before;
      for (const Page& page : tile_pages(plan)) {
        CHECK(shows_something(plan.sheet, *page.window));
        CHECK(before < page.label);
        before = page.label;
      }
    }
  }
}

TEST_CASE("no more pages than the plain grid over the pieces takes, either way round") {
  for (const std::string& paper : each(kPapers)) {
    const PrintOptions options = options_for(paper);
    const PrintPlan plan = plan_for(options, tiled_notes());
    const Box ink = drawn_box(plan.sheet);
    const auto plain = [&](double w, double h) {
      const double across = w - 20.0 - 10.0, up = h - 20.0 - 6.0 - 10.0;
      return std::ceil((ink.width() + 1.0 - 10.0) / across) *
             std::ceil((ink.height() + 1.0 - 10.0) / up);
    };
    const double w = options.paper.width.mm(), h = options.paper.height.mm();
    CHECK(static_cast<double>(tile_pages(plan).size()) <= std::min(plain(w, h), plain(h, w)));
  }
}

TEST_CASE("furniture stays inside the margins, and its texts stand free of one another") {
  for (const std::string& paper : kPapers) {
    for (const SheetNotes& notes : {tiled_notes(), long_notes()}) {
      for (const Page& page : plan_for(options_for(paper), notes).pages) {
        INFO(paper << " page " << page.label);
        const Box box = drawn_box(page.furniture);
        CHECK(box.left >= 10.0 - 1e-6);
        CHECK(box.bottom >= 10.0 - 1e-6);
        CHECK(box.right <= page.width - 10.0 + 1e-6);
        CHECK(box.top <= page.height - 10.0 + 1e-6);
        CHECK(text_in_the_way(page.furniture) == "");
      }
    }
  }
}

TEST_CASE("page furniture stands where the drawing leaves room") {
  for (const std::string paper : {"a4", "letter", "a3"}) {
    const PrintPlan plan = plan_for(options_for(paper), tiled_notes());
    for (const Page& page : tile_pages(plan)) {
      INFO(paper << " page " << page.label);
      const Placement to_page =
          Placement::shift(page.window_at - Point{page.window->left, page.window->bottom});
      for (const SheetText& text : page.furniture.texts) {
        for (const Stroke& stroke : plan.sheet.strokes) {
          CHECK(!(runs_through(placed(stroke.path, to_page), text) &&
                  in(Box{page.window_at.x, page.window_at.y, page.width - 10.0, page.height - 10.0},
                     text.at)));
        }
      }
    }
  }
}

TEST_CASE("the first page has the squares of 100 mm and 4 in, every tile one of 20 mm") {
  for (const std::string& paper : each(kPapers)) {
    const PrintPlan plan = plan_for(options_for(paper), tiled_notes());
    const auto squares = strokes_of(plan.pages.front().furniture, LineRole::TestSquare);
    REQUIRE(squares.size() == 2);
    CHECK(std::any_of(squares.begin(), squares.end(),
                      [](const Stroke* s) { return is_square(*s, 100.0); }));
    CHECK(std::any_of(squares.begin(), squares.end(),
                      [](const Stroke* s) { return is_square(*s, 101.6); }));
    for (const Page& page : tile_pages(plan)) {
      const auto small = strokes_of(page.furniture, LineRole::TestSquare);
      REQUIRE(small.size() == 1);
      CHECK(is_square(*small.front(), 20.0));
      CHECK(all_text(page.furniture).find(page.label + "\n") != std::string::npos);
      CHECK(all_text(page.furniture).find("print at 100 %, no scaling") != std::string::npos);
      CHECK(all_text(page.furniture).find("Łucja Wiśniewska") != std::string::npos);
    }
  }
}

TEST_CASE("neighbours name each other, and their match marks make diamonds across the cut edge") {
  for (const std::string paper : {"a4", "letter", "a3", "150x150"}) {
    const auto pages = tile_pages(plan_for(options_for(paper), tiled_notes()));
    int joints = 0;
    for (const Page& page : pages) {
      const Place at = place_of(page.label);
      for (const auto& [row, column] : std::vector<std::pair<int, int>>{{0, 1}, {1, 0}}) {
        const Page* other = page_at(pages, at.row + row, at.column + column);
        if (other == nullptr) continue;
        INFO(paper << " " << page.label << " and " << other->label);
        ++joints;
        CHECK(all_text(page.furniture).find("joins " + other->label) != std::string::npos);
        CHECK(all_text(other->furniture).find("joins " + page.label) != std::string::npos);
        int diamonds = 0;
        const auto theirs = marks_on_sheet(*other);
        for (const HalfDiamond& mine : marks_on_sheet(page)) {
          for (const HalfDiamond& half : theirs) {
            if (distance(mine.base, half.base) > 1e-9) continue;
            CHECK(norm(mine.towards + half.towards) < 1e-9);
            // The other page, cut along its frame, is laid over this one.
            const double off =
                row > 0 ? half.base.y - other->window->top : half.base.x - other->window->left;
            CHECK(std::abs(off) < 1e-9);
            CHECK((row > 0 ? mine.towards.y : -mine.towards.x) == Approx(5.0));
            ++diamonds;
          }
        }
        CHECK(diamonds == 3);
      }
    }
    CHECK(joints > 0);
  }
}

TEST_CASE("no text is cut by a page's edge, and every page names the pieces that it shows") {
  for (const std::string& paper : kPapers) {
    for (const CutStyle cut : {CutStyle::Toile, CutStyle::Card, CutStyle::Net}) {
      for (const double size : {0.6, 1.0, 1.3}) {
        const PrintPlan plan = plan_for(options_for(paper, cut), tiled_notes(), size);
        for (const Page& page : tile_pages(plan)) {
          INFO(paper << " size " << size << ", page " << page.label);
          CHECK(cut_text(plan.sheet, *page.window) == "");
          CHECK(unnamed_piece(plan, page) == "");
          CHECK(large_unnamed_part(plan, page) == "");
        }
      }
    }
  }
}

TEST_CASE("a page that lies wholly inside a piece is printed") {
  const Pattern pattern = scaled(sample_pattern(), 3.0);
  Layout layout = lay_out(pattern, options_for("150x150", CutStyle::Net), tiled_notes());
  TextFonts fonts;
  const auto pages = tile_pages(tile(layout, fonts));
  for (const LaidPiece& laid : layout.pieces) {
    const Path outline = placed(flat_outline(laid.piece), Placement::shift(laid.at));
    const Box box = box_of(outline);
    for (double x = box.left; x < box.right; x += 20.0) {
      for (double y = box.bottom; y < box.top; y += 20.0) {
        INFO(laid.piece.name << " x " << x << " y " << y);
        if (contains(outline, {x, y}, 0.1)) CHECK(in_some_window(pages, {x, y}));
      }
    }
  }
}

TEST_CASE("the two test squares lie side by side where the paper is wide enough") {
  for (const std::string& paper : kPapers) {
    INFO(paper);
    const Page map = plan_for(options_for(paper), tiled_notes()).pages.front();
    const auto squares = strokes_of(map.furniture, LineRole::TestSquare);
    REQUIRE(squares.size() == 2);
    const Box a = box_of(squares[0]->path), b = box_of(squares[1]->path);
    if (paper == "150x150") {
      CHECK(distance({a.left, a.bottom}, {b.left, b.bottom}) > 10.0);  // told apart
    } else {
      CHECK(b.left - a.right >= 5.0);
      CHECK(a.bottom == Approx(b.bottom));
    }
  }
}

// 101.6 and 100 mm with 8 mm between them, and margins of 10 mm: 229.6 mm.
TEST_CASE("paper of 229.6 mm is wide enough for both test squares side by side, less is not") {
  const auto side_by_side = [](const std::string& paper) {
    const Page map = plan_for(options_for(paper), tiled_notes()).pages.front();
    const auto squares = strokes_of(map.furniture, LineRole::TestSquare);
    REQUIRE(squares.size() == 2);
    return !box_of(squares[0]->path).overlaps(box_of(squares[1]->path));
  };
  CHECK(side_by_side("230x230"));
  CHECK_FALSE(side_by_side("229x229"));
  CHECK(side_by_side("150x230"));
}

TEST_CASE("the map says whose pattern it is and what to know before cutting") {
  const PrintPlan plan = plan_for(options_for("a4"), tiled_notes());
  std::string text = all_text(plan.pages.front().furniture);
  for (const Page& page : tile_pages(plan)) {
    CHECK(text.find(page.label + "\n") != std::string::npos);
  }
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (const char* said :
       {"Łucja Wiśniewska", "session 2026-03-14", "blockwright 0.1.0", "Front: cut 1 on the fold",
        "Back: cut 2, a pair", "Seam allowance 2 cm", "bust girth 5 cm", "scye depth (± 1.1 cm)",
        "The waist girth was read twice, 3 cm apart.", "A1", "100 mm", "4 in"}) {
    INFO(said);
    CHECK(text.find(said) != std::string::npos);
  }
}

TEST_CASE("long lists go on to further map pages and lose nothing") {
  for (const std::string paper : each({"a4", "letter", "150x150"})) {
    const PrintPlan plan = plan_for(options_for(paper), long_notes());
    std::string words;
    std::size_t maps = 0;
    for (const Page& page : plan.pages) {
      if (page.window) continue;
      ++maps;
      CHECK(page.label == (maps == 1 ? "map" : "map " + std::to_string(maps)));
      words += all_text(page.furniture);
    }
    CHECK(maps > 1);
    for (int i = 0; i < 60; ++i) {
      for (const std::string word : each({"easeline", "estimate", "caution"})) {
        CHECK(words.find(word + std::to_string(i)) != std::string::npos);
      }
    }
  }
}

TEST_CASE("a paper too small for the test squares is refused with its size", "[kSmallestPaper]") {
  CHECK_FALSE(tile_pages(plan_for(options_for("150x300"), tiled_notes())).empty());
  for (const std::string paper : {"149.9x300", "120x120", "300x149"}) {
    try {
      plan_for(options_for(paper), tiled_notes());
      FAIL(paper << " was accepted");
    } catch (const UsageError& error) {
      CHECK(error.problem().code == "paper.too_small");
      CHECK(error.problem().message.plain().find(paper) != std::string::npos);
    }
  }
}

TEST_CASE("a roll carries the pieces in strips of its width") {
  const PrintPlan plan = plan_for(options_for("roll:297"), tiled_notes());
  const auto pages = tile_pages(plan);
  CHECK(pages.size() <= 3);
  for (const Page& page : each(pages)) CHECK(std::min(page.width, page.height) >= 297.0 - 1e-9);
  for (const Stroke& stroke : each(plan.sheet.strokes)) {
    for (const Point p : flattened(stroke.path, 0.1)) REQUIRE(in_some_window(pages, p));
  }
}

TEST_CASE("the same pattern gives the same plan") {
  const PrintPlan one = plan_for(options_for("a4"), tiled_notes());
  const PrintPlan two = plan_for(options_for("a4"), tiled_notes());
  REQUIRE(one.pages.size() == two.pages.size());
  CHECK(one.title == two.title);
  for (std::size_t i = 0; i < one.pages.size(); ++i) {
    CAPTURE(i);
    const Sheet &a = one.pages[i].furniture, &b = two.pages[i].furniture;
    REQUIRE(a.strokes.size() == b.strokes.size());
    for (std::size_t k = 0; k < a.strokes.size(); ++k) {
      CHECK(a.strokes[k].path == b.strokes[k].path);
    }
    CHECK(all_text(a) == all_text(b));
  }
}

TEST_CASE("the map of a comparison says which lines are whose, and not that they were made") {
  SheetNotes notes = tiled_notes();
  notes.versions = {"grey and dotted: the older", "black: the newer"};
  const std::string text = all_text(plan_for(options_for("a4"), notes).pages.front().furniture);
  CHECK(text.find("The two versions\ngrey and dotted: the older") != std::string::npos);
  CHECK(text.find("Made from the block") == std::string::npos);
}
