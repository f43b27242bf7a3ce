#include "blockwright/layout/print_plan.hpp"
#include "darts/sketch.hpp"
#include "first/pictures.hpp"
#include "fits/crop.hpp"

#include <cmath>
#include <stdexcept>
#include <string>
#include <utility>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kCaptionLine = 18.0, kRoomBottom = 44.0, kRoomHeight = 236.0;
constexpr double kSquaresMiddle = 110.0, kSquaresBottom = 120.0, kAllMiddle = 360.0,
                 kJoinMiddle = 640.0;
constexpr double kLargestAll = 250.0;  // width of the picture of all pages
constexpr double kSquareScale = 0.82, kRulerDepth = 15.0;
constexpr double kPageScale = 0.75, kApart = 24.0, kRows = 34.0;
constexpr double kShownWidth = 130.0, kShownHeight = 132.0;  // mm of each page to be joined

Path box_path(const Box& b) {
  return Path::through({{b.left, b.bottom},
                        {b.right, b.bottom},
                        {b.right, b.top},
                        {b.left, b.top},
                        {b.left, b.bottom}});
}

Point middle(const Box& b) { return {0.5 * (b.left + b.right), 0.5 * (b.bottom + b.top)}; }

// A square of `side` mm with a ruler of so many parts along its lower edge.
void draw_square(Diagram& d, double left, double side, int parts, const std::string& name) {
  const double whole = kSquareScale * side, bottom = kSquaresBottom;
  d.line(box_path({left, bottom, left + whole, bottom + whole}), Look::New);
  d.label({left + 0.5 * whole, bottom + 0.5 * whole}, {}, name);
  d.line(box_path({left - 7.0, bottom - kRulerDepth, left + whole + 7.0, bottom}), Look::Before);
  for (int i = 0; i <= parts; ++i) {
    const double x = left + whole * i / parts;
    d.line({x, bottom}, {x, bottom - 5.0}, Look::Before);
  }
  d.label({left, bottom - 10.0}, {}, "0");
  d.label({left + whole, bottom - 10.0}, {}, std::to_string(parts));
}

bool is_outline(const Stroke& stroke) {
  return stroke.role == LineRole::CutLine || stroke.role == LineRole::StitchLine ||
         stroke.role == LineRole::DartLeg;
}

void draw_all_pages(Diagram& d, const PrintPlan& plan) {
  Box all;
  for (const Page& page : plan.pages) {
    if (page.window) all.include(*page.window);
  }
  const double scale = std::fmin(kLargestAll / all.width(), kRoomHeight / all.height());
  const Sketch s(d, scale, {kAllMiddle, kRoomBottom + 0.5 * kRoomHeight}, middle(all));
  for (const Stroke& stroke : plan.sheet.strokes) {
    if (is_outline(stroke)) s.line(stroke.path, Look::New);
  }
  for (const Page& page : plan.pages) {
    if (!page.window) continue;
    s.line(box_path(*page.window), Look::Compass);
    s.label(middle(*page.window), {}, page.label);
  }
}

// What a page shows inside a box of its own millimetres; its lower left corner is the sketch's
// origin.
void draw_page(const Sketch& s, const PrintPlan& plan, const Page& page, const Box& shown) {
  for (const Path& part : inside(box_path({0.0, 0.0, page.width, page.height}), shown)) {
    s.line(part, Look::Before);
  }
  for (const Stroke& stroke : page.furniture.strokes) {
    for (const Path& part : inside(stroke.path, shown)) s.line(part, Look::New);
  }
  const Vec to_page = page.window_at - Point{page.window->left, page.window->bottom};
  for (const Stroke& stroke : plan.sheet.strokes) {
    if (!is_outline(stroke)) continue;
    for (const Path& part : inside(stroke.path, *page.window)) {
      for (const Path& seen : inside(placed(part, Placement::shift(to_page)), shown)) {
        s.line(seen, Look::New);
      }
    }
  }
}

// The first page that has a neighbour to its right, and that neighbour.
std::pair<const Page*, const Page*> neighbours(const PrintPlan& plan) {
  for (const Page& left : plan.pages) {
    for (const Page& right : plan.pages) {
      if (!left.window || !right.window || left.label[0] != right.label[0]) continue;
      const double step = right.window->left - left.window->left;
      if (step > 0.0 && step < left.window->width()) return {&left, &right};
    }
  }
  throw std::runtime_error("no two pages lie side by side");
}

void draw_joining(Diagram& d, const PrintPlan& plan) {
  const auto [left, right] = neighbours(plan);
  const double width = left->width, top = left->height + 2.0, bottom = top - kShownHeight;
  const double frame = right->window_at.x, step = right->window->left - left->window->left;
  const Box of_left{width - kShownWidth, bottom, width + 2.0, top};
  const double scale = kPageScale, low = kRoomBottom - scale * bottom;
  const double high = low + scale * kShownHeight + kRows;
  const Sketch above(d, scale, {kJoinMiddle - scale * width - 0.5 * kApart, high});
  draw_page(above, plan, *left, of_left);
  const Sketch beside(d, scale, {kJoinMiddle + 0.5 * kApart, high});
  draw_page(beside, plan, *right, {-2.0, bottom, kShownWidth, top});
  beside.line({frame, bottom - 6.0}, {frame, top + 6.0}, Look::Compass);
  beside.label({frame, bottom - 6.0}, {0.0, -8.0}, "cut along the frame");
  const Sketch below(d, scale, {kJoinMiddle - scale * (0.5 * (width + step + frame)), low});
  draw_page(below, plan, *left, of_left);
  draw_page(below.moved({step, 0.0}), plan, *right, {frame, bottom, kShownWidth, top});
}

}  // namespace

void draw_pages(Diagram& d, const Pattern& block) {
  PrintOptions options;
  options.paper = paper_named("a4");
  TextFonts fonts;
  const PrintPlan plan = tile(lay_out(block, options, {}), fonts);
  draw_square(d, 18.0, 100.0, 10, "100 mm");
  draw_square(d, 122.0, 101.6, 4, "4 in");
  d.label({kSquaresMiddle, kCaptionLine}, {}, "1  measure both squares");
  draw_all_pages(d, plan);
  d.label({kAllMiddle, kCaptionLine}, {}, "2  lay the pages out by row and column");
  draw_joining(d, plan);
  d.label({kJoinMiddle, kCaptionLine}, {}, "3  cut, lay over: the match marks close");
}

}  // namespace blockwright_pictures
