#include "pages.hpp"
#include "text_placer.hpp"
#include "words.hpp"

namespace blockwright {
namespace {

constexpr double kTileCell = 2.0;
constexpr double kFooterText = 2.8;
constexpr double kNeighbourText = 3.0;
constexpr double kRoundSquare = 2.0;  // clear paper round the small square, mm
constexpr const char* kScaleAdvice = "print at 100 %, no scaling";

// Where the drawing is, for all pages.
struct DrawnBoxes {
  std::vector<Box> strokes;
  std::vector<Box> texts;
};

// Lines of a label begin below one another; nothing goes between their ends.
DrawnBoxes drawn_boxes(const Sheet& sheet) {
  DrawnBoxes boxes;
  for (const Stroke& stroke : sheet.strokes) boxes.strokes.push_back(box_of(stroke.path));
  Box block;
  const SheetText* above = nullptr;
  for (const SheetText& text : sheet.texts) {
    if (above == nullptr || above->piece != text.piece || above->at.x != text.at.x) block = {};
    above = &text;
    for (const Box& box : boxes_of(text)) block.include(box);
    boxes.texts.push_back(block);
  }
  return boxes;
}

// Furniture is placed in sheet coordinates, where the drawing is, and moved to the page at the end.
class TilePage {
 public:
  TilePage(const Tiling& tiling, const Tile& tile, double overlap, TextFonts& fonts)
      : tiling_(tiling),
        tile_(tile),
        overlap_(overlap),
        space_(tile.window, kTileCell),
        drawing_(furniture_, fonts) {}

  void leave_free(const Sheet& sheet, const DrawnBoxes& boxes) {
    const Box& w = tile_.window;
    const Box reach = {w.left - 1.0, w.bottom - 1.0, w.right + 1.0, w.top + 1.0};
    for (std::size_t i = 0; i < sheet.strokes.size(); ++i) {
      if (boxes.strokes[i].overlaps(reach)) space_.take(sheet.strokes[i].path);
    }
    for (const Box& text : boxes.texts) space_.take(text);
  }

  Sheet draw() {
    drawing_.closed(SheetLayer::Marks, LineRole::Frame, "frame", rectangle(tile_.window));
    draw_marks();
    draw_square();
    for (const PageSide side : kPageSides) name_neighbour(side);
    return std::move(furniture_);
  }

 private:
  void draw_marks() {
    for (const Path& mark : match_marks(tiling_, tile_)) {
      drawing_.closed(SheetLayer::Marks, LineRole::Frame, "match mark", mark);
      space_.take(box_of(mark));
    }
  }

  // In the upper left of the page where there is room, else in the corner itself.
  void draw_square() {
    const Box& w = tile_.window;
    const double room = kSmallSquare + 2.0 * kRoundSquare;
    const Point corner = {w.left + overlap_ + 0.5 * room, w.top - overlap_ - 0.5 * room};
    const auto found = space_.find({room, room}, corner);
    const Point at = found ? Point{found->left + kRoundSquare, found->bottom + kRoundSquare}
                           : corner - Vec{0.5 * kSmallSquare, 0.5 * kSmallSquare};
    draw_small_square(drawing_, at, tile_label(tile_));
    space_.take(square_at(at, kSmallSquare));
  }

  void name_neighbour(PageSide side) {
    const Tile* other = tiling_.neighbour(tile_, side);
    if (other == nullptr) return;
    const Path edge({inner_edge(tile_.window, side)});
    const std::string text = "joins " + tile_label(*other);
    TextPlacer placer(drawing_, space_);
    if (!placer.beside(edge, text, kNeighbourText)) {
      placer.set_beside(edge, 0.25, text, kNeighbourText);
    }
  }

  const Tiling& tiling_;
  const Tile& tile_;
  double overlap_;
  FreeSpace space_;
  Sheet furniture_;
  TextDrawing drawing_;
};

// What the page shows comes first: whose it is can be shortened.
void write_footer(Page& page, const Tile& tile, const Layout& layout, TextFonts& fonts) {
  TextDrawing drawing(page.furniture, fonts);
  const double margin = layout.options.margin.mm();
  const double left = margin, right = page.width - margin;
  const double baseline = margin + 1.0;
  const double advice = fonts.room(kScaleAdvice, kFooterText).width;
  std::vector<std::string> pieces;
  for (const std::string& piece : tile.pieces) pieces.push_back(title_of(piece));
  const std::string text = page.label + ": " + listed(pieces) + "   " + layout.notes.client +
                           ", session " + layout.notes.session;
  drawing.text(shortened(fonts, text, kFooterText, right - left - advice - 5.0), {left, baseline},
               kFooterText, TextAnchor::Start);
  drawing.text(kScaleAdvice, {right, baseline}, kFooterText, TextAnchor::End);
}

}  // namespace

std::vector<Page> tile_pages(const Tiling& tiling, const Sheet& sheet, const Layout& layout,
                             TextFonts& fonts) {
  const DrawnBoxes boxes = drawn_boxes(sheet);
  std::vector<Page> pages;
  for (const Tile& tile : tiling.tiles) {
    TilePage drawn(tiling, tile, layout.options.overlap.mm(), fonts);
    drawn.leave_free(sheet, boxes);
    const Vec to_page = tiling.window_at - Point{tile.window.left, tile.window.bottom};
    Page page;
    page.label = tile_label(tile);
    page.furniture = shifted(drawn.draw(), to_page);
    page.width = page.furniture.width = tiling.page_width;
    page.height = page.furniture.height = tiling.page_height;
    page.window = tile.window;
    page.window_at = tiling.window_at;
    write_footer(page, tile, layout, fonts);
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace blockwright
