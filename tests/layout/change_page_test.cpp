#include "blockwright/layout/change_page.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/figure/seen_figure.hpp"
#include "blockwright/text/units.hpp"
#include "piece_change.hpp"
#include "seen_grid.hpp"
#include "sheet_reading.hpp"
#include "support/each.hpp"
#include "support/sample_pattern.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

PrintOptions on(const std::string& paper) {
  PrintOptions options;
  options.paper = paper_named(paper);
  return options;
}

/// The front with a corner lower.
Pattern with_lower(Pattern pattern, const std::string& corner, double by) {
  Piece& front = pattern.pieces.front();
  const Point was = front.landmark(corner);
  for (Edge& edge : front.edges) {
    std::vector<Curve> curves = edge.path.curves();
    for (Curve& curve : curves) {
      if (auto* s = std::get_if<Segment>(&curve)) {
        if (s->a == was) s->a.y -= by;
        if (s->b == was) s->b.y -= by;
      } else {
        auto& c = std::get<CubicCurve>(curve);
        if (c.p0 == was) c.p0.y -= by, c.p1.y -= by;
        if (c.p3 == was) c.p3.y -= by, c.p2.y -= by;
      }
    }
    edge.path = Path(std::move(curves));
  }
  for (Landmark& point : front.landmarks) {
    if (point.name == corner) point.at.y -= by;
  }
  return pattern;
}

Pattern with_neck_lower(double by) { return with_lower(sample_pattern(), "front_neck_point", by); }

ChangePage page_of(std::size_t lines = 1, std::size_t figures = 1) {
  ChangePage page;
  page.before = sample_pattern();
  page.after = with_neck_lower(10.0);
  page.title = "Ondine Marsh";
  page.subtitle = "Fitting, session 2026-03-14";
  page.words = {{"What this changed", true}};
  for (std::size_t i = 0; i < lines; ++i) {
    page.words.push_back({std::to_string(i + 1) + ". lower front neck 1.0 cm, and why it was"});
  }
  for (std::size_t i = 0; i < figures; ++i) {
    page.seen.push_back({seen_figure({CorrectionRow::FrontNeckLower}, 0.09), "front neck lower"});
  }
  page.before_is = "as it was";
  page.now_is = "as it is now";
  return page;
}

/// Front and back as a right and a left half each; the right ones of one pattern, the left ones of
/// another.
Pattern in_halves(const Pattern& right, const Pattern& left) {
  Pattern halves;
  for (std::size_t i = 0; i < right.pieces.size(); ++i) {
    const bool front = right.pieces[i].name == "front";
    Piece a = front ? mirrored(right.pieces[i]) : right.pieces[i];
    Piece b = front ? left.pieces[i] : mirrored(left.pieces[i]);
    a.name += "_right";
    b.name += "_left";
    halves.pieces.push_back(a);
    halves.pieces.push_back(b);
  }
  return halves;
}

struct Drawn {
  Sheet sheet;
  double reduction;
};
DrawnChange all_drawn(const ChangePage& page, const std::string& paper) {
  TextFonts fonts;
  return change_page(page, on(paper), fonts);
}
/// Of one page.
Drawn drawn_on(const ChangePage& page, const std::string& paper) {
  DrawnChange drawn = all_drawn(page, paper);
  REQUIRE(drawn.plan.pages.size() == 1);
  return {std::move(drawn.plan.pages.front().furniture), drawn.reduction};
}

std::string text_of_all(const DrawnChange& drawn) {
  std::string text;
  for (const Page& page : drawn.plan.pages) text += all_text(page.furniture);
  return text;
}

std::size_t count_in(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++found;
  }
  return found;
}

}  // namespace

TEST_CASE("What changed is on pages of any paper, inside their margin, and nothing is to be cut") {
  for (const char* paper : each({"a4", "letter", "a3", "a1", "roll:300", "210x240", "120x300"})) {
    for (const std::size_t lines : {1U, 12U, 80U}) {
      CAPTURE(paper, lines);
      const DrawnChange drawn = all_drawn(page_of(lines, lines), paper);
      for (const Page& page : drawn.plan.pages) {
        const Sheet& sheet = page.furniture;
        const Box ink = drawn_box(sheet);
        CHECK(ink.left >= 10.0 - 1e-6);
        CHECK(ink.bottom >= 10.0 - 1e-6);
        CHECK(ink.right <= sheet.width - 10.0 + 1e-6);
        CHECK(ink.top <= sheet.height - 10.0 + 1e-6);
        CHECK(text_in_the_way(sheet) == "");
        for (const LineRole role : {LineRole::CutLine, LineRole::FoldLine, LineRole::Grainline,
                                    LineRole::Notch, LineRole::Hole}) {
          CHECK(strokes_of(sheet, role).empty());
        }
      }
      CHECK(all_text(drawn.plan.pages.front().furniture).find("not for cutting") !=
            std::string::npos);
      const std::string text = text_of_all(drawn);
      CHECK(text.find("cut 1") == std::string::npos);
      CHECK(text.find("cut 2") == std::string::npos);
      CHECK(text.find("\n" + std::to_string(lines) + ". lower") != std::string::npos);
      CHECK(count_in(text, "front neck lower") == lines);
    }
  }
}

TEST_CASE("The scale that the page says is the one that it is drawn in") {
  for (const auto& [paper, words] : {std::pair{"a4", "1:4,"}, {"a1", "1:1,"}}) {
    const auto [sheet, reduction] = drawn_on(page_of(), paper);
    CAPTURE(paper, reduction, all_text(sheet));
    const Piece front = sample_front();
    const double centre = length(front.edge("centre_front").path) - 10.0;
    double drawn = 0.0;
    for (const Stroke* stroke : strokes_named(sheet, "centre_front")) {
      if (stroke->role == LineRole::After) drawn += length(stroke->path);
    }
    CHECK(drawn == Approx(centre / reduction).margin(2.0 / reduction));
    const std::string said = "1:" + std::to_string(static_cast<int>(reduction)) + ",";
    CHECK(all_text(sheet).find(said) != std::string::npos);
    if (std::string(paper) == "a1") CHECK(reduction == 1.0);
  }
}

TEST_CASE("What moved is heavy, with one arrow that ends there and says how far") {
  for (const Unit unit : {Unit::Cm, Unit::Inch}) {
    ChangePage page = page_of();
    page.unit = unit;
    const auto [sheet, reduction] = drawn_on(page, "a4");
    const auto arrows = strokes_of(sheet, LineRole::Arrow);
    REQUIRE(arrows.size() == 2);
    const Path& shaft = arrows.front()->path;
    CHECK(end_tangent(shaft).y == Approx(-1.0));
    double off = 100.0;
    for (const Stroke* stroke : strokes_of(sheet, LineRole::MovedEdge)) {
      CHECK(stroke->name == "neckline");
      off = std::min({off, distance(stroke->path.start(), shaft.end()),
                      distance(stroke->path.end(), shaft.end())});
    }
    CHECK(off < 3.0);  // beside the centre line, level with the new neck
    const std::string text = all_text(sheet);
    CHECK(text.find(unit == Unit::Cm ? "1.0 cm\n" : "3/8 in\n") != std::string::npos);
    CHECK(text.find("laid together at the underarm") != std::string::npos);
    CHECK(text.find("unchanged") != std::string::npos);
  }
}

TEST_CASE("The old line is drawn where it lay elsewhere, and nowhere under the new one") {
  const auto [sheet, reduction] = drawn_on(page_of(), "a4");
  const auto before = strokes_of(sheet, LineRole::Before);
  REQUIRE_FALSE(before.empty());
  for (const Stroke* stroke : before) {
    CHECK((stroke->name == "neckline" || stroke->name == "centre_front"));
  }
  ChangePage same = page_of();
  same.after = same.before;
  const Sheet unchanged = drawn_on(same, "a4").sheet;
  CHECK(strokes_of(unchanged, LineRole::Before).empty());
  CHECK(strokes_of(unchanged, LineRole::MovedEdge).empty());
  CHECK(strokes_of(unchanged, LineRole::Arrow).empty());
}

TEST_CASE("Long words under the figures are whole, on that page or the next") {
  const auto drawn = [](std::size_t figures) {
    ChangePage page = page_of(1, figures);
    for (SeenOnPage& seen : page.seen) {
      seen.words =
          "loose folds from the neck to the underarm, folds below the armhole, and the "
          "underarm seam sags between them";
    }
    return all_drawn(page, "a4");
  };
  CHECK(drawn(2).plan.pages.size() == 1);
  for (const std::size_t figures : {2U, 4U}) {
    std::string text = text_of_all(drawn(figures));
    std::ranges::replace(text, '\n', ' ');
    CHECK(count_in(text, "loose folds from the neck") == figures);
    CHECK(count_in(text, "sags between them") == figures);
  }
}

TEST_CASE("A page has four figures at most; more have a page of their own, with what mends each",
          "[kMostSeenOnPage]") {
  ChangePage page = page_of(1, kMostSeenOnPage);
  for (SeenOnPage& seen : page.seen) seen.cure = "1. lower front neck";
  const DrawnChange four = all_drawn(page, "a4");
  REQUIRE(four.plan.pages.size() == 1);
  CHECK(text_of_all(four).find("page 1") == std::string::npos);
  page.seen.push_back(page.seen.front());
  const DrawnChange five = all_drawn(page, "a4");
  REQUIRE(five.plan.pages.size() == 2);
  const std::string first = all_text(five.plan.pages[0].furniture);
  const std::string second = all_text(five.plan.pages[1].furniture);
  CHECK(count_in(first, "front neck lower") == 0);
  CHECK(first.find("page 1 of 2; what was seen: page 2") != std::string::npos);
  CHECK(count_in(second, "front neck lower") == kMostSeenOnPage + 1);
  CHECK(count_in(second, "1. lower front neck") == kMostSeenOnPage + 1);
  CHECK(second.find("page 2 of 2") != std::string::npos);
}

TEST_CASE("Figures have a page of their own before the pieces shrink below 1:4",
          "[kMostReducedByFigures]") {
  const auto drawn = [](double size, std::size_t figures) {
    ChangePage page = page_of(1, 0);
    page.before = page.after = scaled(sample_pattern(), size);
    for (std::size_t i = 0; i < figures; ++i) {
      page.seen.push_back({seen_figure({CorrectionRow::FrontNeckLower}, 0.09),
                           "fault " + std::to_string(i + 1) + "."});
    }
    return all_drawn(page, "a4");
  };
  int shrunk = 0, apart = 0;
  for (double size = 0.5; size < 1.5; size += 0.02) {
    CAPTURE(size);
    const DrawnChange with = drawn(size, 4);
    const double bare = drawn(size, 0).reduction;
    for (const char* words : {"fault 1.", "fault 2.", "fault 3.", "fault 4."}) {
      CHECK(count_in(text_of_all(with), words) == 1);
    }
    CHECK(with.reduction >= bare);
    CHECK((with.reduction <= kMostReducedByFigures || bare > kMostReducedByFigures));
    shrunk += with.reduction > kMostReducedByFigures ? 1 : 0;
    apart += with.plan.pages.size() > 1 ? 1 : 0;
  }
  CHECK(shrunk > 0);
  CHECK(apart > 0);
}

// Four figures beside a page's words; on lower paper they are smaller.
TEST_CASE("Figures are drawn at 0.7 of their size before they go to a page of their own",
          "[kSmallestSeen]") {
  TextFonts fonts;
  const SeenOnPage one{seen_figure({CorrectionRow::FrontNeckLower}, 0.09), "seen"};
  const std::vector<SeenOnPage> two = {one, one};
  const auto scale = [&](double height) {
    const auto grid = seen_at_right(two, {0.0, 0.0, 190.0, height}, 60.0, fonts);
    return grid ? grid->scale : 0.0;
  };
  double least = 0.0;
  for (double height = 60.0; height > 10.0; height -= 0.5) {
    if (scale(height) > 0.0) least = scale(height);
  }
  CHECK(scale(60.0) == 1.0);
  CHECK(least == kSmallestSeen);
  CHECK(scale(10.0) == 0.0);
}

TEST_CASE("Pieces that would be drawn smaller than 1:12 are refused", "[kMostReduced]") {
  TextFonts fonts;
  ChangePage page = page_of();
  double last = 0.0, size = 1.0;
  try {
    for (; size < 30.0; size *= 1.1) {
      page.before = page.after = scaled(sample_pattern(), size);
      last = change_page(page, on("a4"), fonts).reduction;
    }
    FAIL("everything fits");
  } catch (const UsageError& error) {
    CHECK(error.problem().code == "paper.too_small");
    CHECK(error.problem().message.plain().find("1:12") != std::string::npos);
  }
  CHECK(last == kMostReduced);
}

TEST_CASE("A line is heavy where it moved by enough to see, or by half of all there is to see",
          "[kSeenMove][kSeenShare]") {
  const auto heavy = [](const ChangePage& page) {
    std::set<std::string> names;
    const Sheet sheet = drawn_on(page, "a4").sheet;
    for (const Stroke* stroke : strokes_of(sheet, LineRole::MovedEdge)) names.insert(stroke->name);
    return names;
  };
  const auto moved = [](double neck, double side_neck) {
    ChangePage page = page_of();
    page.after = with_lower(with_neck_lower(neck), "side_neck_point", side_neck);
    return page;
  };
  const std::set<std::string> both = {"neckline", "shoulder"}, one = {"neckline"}, none;
  CHECK(heavy(moved(10.0, 1.8 * kSeenMove)) == both);
  CHECK(heavy(moved(10.0, 0.9 * kSeenMove)) == one);
  CHECK(heavy(moved(1.0, 2.0 * kSeenShare)) == both);
  CHECK(heavy(moved(1.0, 0.9 * kSeenShare)) == one);
  CHECK(heavy(moved(0.0, 0.0)) == none);
}

TEST_CASE("A moved line is one line where it crosses the old one, and a stub of it is left out") {
  const Path straight = Path::through({{0.0, 0.0}, {200.0, 0.0}});
  const std::vector<PieceLine> lines = {{"waist", Path::through({{0.0, 5.0}, {200.0, -5.0}})}};
  const LinesAsked old({{"waist", straight}});
  const auto moved = [&](MovedFrom from) { return parts(lines, old, Lies::Off, from).size(); };
  CHECK(moved({1.5, 30.0, 0.0}) == 2);  // the two lie nearer than 1.5 mm over 60 mm
  CHECK(moved({1.5, 90.0, 0.0}) == 1);
  CHECK(moved({4.5, 7.0, 0.0}) == 2);  // over the last 10 mm at each end
  CHECK(moved({4.5, 7.0, 15.0}) == 0);
}

TEST_CASE("An amount is written as given at its place, off all lines, and only where that moved") {
  ChangePage page = page_of();
  page.amounts = {{"front", "front_neck_point", {"7 cm", "per half"}},
                  {"front", "shoulder_point", {"9 cm"}},
                  {"back", "nape", {"9 cm"}}};
  const Sheet sheet = drawn_on(page, "a4").sheet;
  const std::string text = all_text(sheet);
  CHECK(text.find("7 cm\nper half\n") != std::string::npos);
  CHECK(text.find("9 cm") == std::string::npos);
  CHECK(text.find("1.0 cm\n") == std::string::npos);
  const auto arrows = strokes_of(sheet, LineRole::Arrow);
  REQUIRE(arrows.size() == 2);
  for (const double share : {0.1, 0.3, 0.5, 0.7, 0.9}) {
    const Path& shaft = arrows.front()->path;
    const Point here = point_at_length(shaft, share * length(shaft));
    for (const LineRole role : {LineRole::After, LineRole::MovedEdge, LineRole::Before}) {
      for (const Stroke* stroke : strokes_of(sheet, role)) {
        CAPTURE(share, stroke->name);
        CHECK(nearest(stroke->path, here).distance > 0.8);
      }
    }
  }
}

// Beside a correction that moved the edge's end, another one's place is not where most moved.
TEST_CASE("An amount with a share of its edge is at that place, though the edge's end moved most") {
  ChangePage page = page_of();
  const auto ends = [&](std::optional<double> share) {
    page.amounts = {{"front", "neckline", {"7 cm"}, share}};
    const Sheet sheet = drawn_on(page, "a4").sheet;
    return strokes_of(sheet, LineRole::Arrow).front()->path.end();
  };
  const Point most = ends(std::nullopt);
  CHECK(ends(0.5).y > most.y + 1.0);
  CHECK(distance(ends(0.6), ends(0.5)) > 1.0);
}

// A number at the back's centre line would be read as the back's.
TEST_CASE("An amount of the front stays clear of the back") {
  ChangePage page = page_of();
  page.after = with_lower(sample_pattern(), "underarm_point", 10.0);
  page.amounts = {{"front", "underarm_point", {"12.5 cm", "whole girth"}}};
  const Sheet sheet = drawn_on(page, "a4").sheet;
  const auto text = [&](const std::string& words) {
    return *std::ranges::find(sheet.texts, words, &SheetText::text);
  };
  CHECK(box_of(room_of(text("whole girth"))).right < text("Back").at.x - 3.0);
}

TEST_CASE("Places that moved have names, the farthest first") {
  const Pattern before = sample_pattern(), after = with_neck_lower(10.0);
  const auto places = moved_places(after.piece("front"), before.piece("front"), {});
  REQUIRE_FALSE(places.empty());
  CHECK(places.front().name == "front_neck_point");
  CHECK(distance(places.front().was, places.front().is) == Approx(10.0));
  for (const MovedPoint& place : places) {
    CHECK((place.name == "front_neck_point" || place.name == "neckline" ||
           place.name == kNecklinePlace || place.name == "centre_front"));
  }
  CHECK(moved_places(after.piece("back"), before.piece("back"), {}).empty());
}

TEST_CASE("Of two halves the one that did not change is left out, and that is said") {
  ChangePage page = page_of();
  page.after = in_halves(with_neck_lower(10.0), sample_pattern());
  const auto [sheet, reduction] = drawn_on(page, "a4");
  const std::string text = all_text(sheet);
  CHECK(text.find("Unchanged and not drawn: Front left and Back left.") != std::string::npos);
  CHECK(text.find("\nFront right\n") != std::string::npos);
  CHECK(text.find("\nBack right\n") != std::string::npos);
  CHECK(text.find("\nFront left\n") == std::string::npos);
  CHECK(reduction == drawn_on(page_of(), "a4").reduction);
  // Of a back whose halves are both unchanged beside a whole front one stays, to be told by.
  page.after = in_halves(sample_pattern(), sample_pattern());
  page.after.pieces.erase(page.after.pieces.begin());
  page.after.pieces.front() = with_neck_lower(10.0).pieces.front();
  const std::string one_back = all_text(drawn_on(page, "a4").sheet);
  CHECK(one_back.find("\nBack right\n") != std::string::npos);
  CHECK(one_back.find("Unchanged and not drawn: Back left.") != std::string::npos);
  // Beside two halves that changed a back that did not would make them smaller.
  page.after = in_halves(with_neck_lower(10.0), with_neck_lower(8.0));
  CHECK(all_text(drawn_on(page, "a4").sheet).find("not drawn: Back left and Back right.") !=
        std::string::npos);
}

TEST_CASE("Halves that both changed lie centre to centre, as on a body") {
  ChangePage page = page_of();
  page.before = in_halves(sample_pattern(), sample_pattern());
  page.after = in_halves(with_lower(with_neck_lower(10.0), "underarm_point", 5.0),
                         with_lower(with_neck_lower(8.0), "underarm_point", 5.0));
  for (Piece& piece : page.after.pieces) {
    if (piece.name.starts_with("back")) piece = page.before.piece(piece.name);
  }
  const auto apart = [&](const char* edge) {
    const Sheet sheet = drawn_on(page, "a4").sheet;
    double least = 1e9, most = -1e9;
    for (const Stroke* stroke : strokes_named(sheet, edge)) {
      if (stroke->role == LineRole::Before) continue;
      least = std::min(least, stroke->path.start().x);
      most = std::max(most, stroke->path.start().x);
    }
    return most - least;
  };
  CHECK(apart("centre_front") < 15.0);
  CHECK(apart("side") > 100.0);
  std::swap(page.after.pieces[0], page.after.pieces[1]);
  CHECK(apart("centre_front") < 15.0);
}

TEST_CASE("A page is turned where four halves are larger on it so, and all is inside its margin") {
  ChangePage page = page_of();
  page.after = in_halves(with_neck_lower(10.0), with_neck_lower(8.0));
  const Pattern longer = scaled(sample_pattern(), 1.02);
  page.after.pieces[2] = in_halves(longer, longer).pieces[2];
  page.after.pieces[3] = in_halves(longer, longer).pieces[3];
  const auto [sheet, reduction] = drawn_on(page, "a4");
  CHECK(sheet.width > sheet.height);
  CHECK(reduction == 5.0);
  const Box ink = drawn_box(sheet);
  CHECK(ink.left >= 10.0 - 1e-6);
  CHECK(ink.bottom >= 10.0 - 1e-6);
  CHECK(ink.right <= sheet.width - 10.0 + 1e-6);
  CHECK(ink.top <= sheet.height - 10.0 + 1e-6);
  CHECK(text_in_the_way(sheet) == "");
  const Sheet upright = drawn_on(page_of(), "a4").sheet;
  CHECK(upright.width < upright.height);
}

TEST_CASE("Warnings that have no room go on on the next page, which is said") {
  ChangePage page = page_of(0);
  for (int i = 0; i < 40; ++i) {
    std::string words = "begins";
    for (int w = 0; w < 30; ++w) words += " and goes on";
    page.words.push_back({words + " to its end."});
  }
  const DrawnChange drawn = all_drawn(page, "a4");
  const std::string text = text_of_all(drawn);
  CHECK(drawn.plan.pages.size() >= 2);
  CHECK(count_in(text, "begins") == 40);
  CHECK(count_in(text, "end.") == 40);
  const std::string first = all_text(drawn.plan.pages.front().furniture);
  CHECK(first.find("goes on on page 2") != std::string::npos);
  CHECK(count_in(first, "begins") == count_in(first, "end."));
}

TEST_CASE("A bust line that alone moved is told, and not as unchanged") {
  ChangePage page = page_of();
  page.after = sample_pattern();
  for (Piece& piece : page.after.pieces) {
    for (BalanceLine& line : piece.balance_lines) {
      if (line.name == "bust_line") line.path = placed(line.path, Placement::shift({0.0, 10.0}));
    }
  }
  const std::string text = all_text(drawn_on(page, "a4").sheet);
  CHECK(text.find("unchanged but for the bust line") != std::string::npos);
  CHECK(text.find("unchanged\n") == std::string::npos);
}

TEST_CASE("An amount stands within 6 mm of its arrow, however many halves there are") {
  ChangePage page = page_of();
  page.after = in_halves(with_lower(sample_pattern(), "underarm_point", 10.0),
                         with_lower(sample_pattern(), "underarm_point", 9.0));
  page.amounts = {{"front_right", "underarm_point", {"12.5 cm", "whole girth"}},
                  {"front_left", "underarm_point", {"11.5 cm", "whole girth"}}};
  const Sheet sheet = drawn_on(page, "a4").sheet;
  const auto from_arrows = [&](const SheetText& text) {
    double near = 1e9;
    for (const Stroke* arrow : strokes_of(sheet, LineRole::Arrow)) {
      for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const Point on = point_at_length(arrow->path, share * length(arrow->path));
        near = std::min(near, nearest(room_of(text), on).distance);
      }
    }
    return near;
  };
  int found = 0;
  for (std::size_t i = 0; i + 1 < sheet.texts.size(); ++i) {
    const SheetText &amount = sheet.texts[i], &below = sheet.texts[i + 1];
    if (amount.text != "12.5 cm" && amount.text != "11.5 cm") continue;
    ++found;
    REQUIRE(below.text == "whole girth");
    CHECK(std::min(from_arrows(amount), from_arrows(below)) < 6.0);
  }
  CHECK(found == 2);
}

TEST_CASE(
    "What a page has to spare stands between pieces, whose sides face each other, not halves") {
  ChangePage page = page_of();
  page.before = in_halves(sample_pattern(), sample_pattern());
  const Pattern longer = scaled(sample_pattern(), 1.02);
  page.after = in_halves(longer, longer);
  const auto [sheet, reduction] = drawn_on(page, "a4");
  std::vector<double> sides, centres;
  const auto take = [&](const char* edge, std::vector<double>& places) {
    for (const Stroke* stroke : strokes_named(sheet, edge)) {
      if (stroke->role != LineRole::Before) places.push_back(stroke->path.start().x);
    }
    std::ranges::sort(places);
  };
  take("side", sides);
  take("centre_front", centres);
  REQUIRE(sides.size() >= 4);
  REQUIRE(centres.size() >= 2);
  const double middle = 0.5 * sheet.width;
  const auto right = std::ranges::lower_bound(sides, middle);
  CHECK(*right - *(right - 1) > 20.0);
  CHECK(centres.back() - centres.front() < 15.0);
}

TEST_CASE("A dart that is one stroke on the page is not drawn") {
  const auto drawn = [](double mouth) {
    Piece piece = sample_pattern().pieces.front();
    Dart narrow = piece.darts.front();
    const Point middle = midpoint(narrow.legs[0], narrow.legs[1]);
    const Vec half = 0.5 * mouth * unit(narrow.legs[1] - narrow.legs[0]);
    narrow.name = "narrow";
    narrow.legs = {middle - half, middle + half};
    piece.darts.push_back(narrow);
    const std::vector<PieceLine> lines = lines_of(piece);
    return std::ranges::count(lines, "narrow", &PieceLine::name);
  };
  CHECK(drawn(1.9) == 0);
  CHECK(drawn(2.1) == 1);
}
