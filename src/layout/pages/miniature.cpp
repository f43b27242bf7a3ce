#include "free_space.hpp"
#include "pages.hpp"
#include "reduction.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace blockwright {
namespace {

constexpr double kTileText = 5.0;
constexpr double kPieceText = 3.4;
// A word is tried at these sizes until it fits.
constexpr std::array<double, 4> kWordScales = {1.0, 0.8, 0.6, 0.45};
constexpr double kMiniatureCell = 1.0;

Box all_windows(const Tiling& tiling) {
  Box box;
  for (const Tile& tile : tiling.tiles) box.include(tile.window);
  return box;
}

// Draws the pieces' cut lines, of a comparison their stitch lines; returns the box of each piece,
// by name.
std::map<std::string, Box> draw_pieces(Drawing& drawing, FreeSpace& space, const Layout& layout,
                                       const Reduction& reduce) {
  std::map<std::string, Box> pieces;
  for (const LaidPiece& piece : layout.pieces) {
    for (const Stroke& stroke : piece.lines.strokes) {
      const bool cut = stroke.role == LineRole::CutLine;
      if (!cut && !(layout.compared && stroke.layer == SheetLayer::Stitch)) continue;
      const Path small = reduce(placed(stroke.path, Placement::shift(piece.at)));
      if (cut) {
        drawing.closed(SheetLayer::Cut, LineRole::CutLine, stroke.piece, small);
      } else {
        drawing.line(SheetLayer::Stitch, stroke.role, stroke.piece, small);
      }
      space.take(small);
      pieces[stroke.piece].include(box_of(small));
    }
  }
  return pieces;
}

Point middle_of(const Box& box) {
  return {0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)};
}

// A word as near to `wish` as there is room inside `within`, smaller if need be.
void set_word(TextDrawing& page, FreeSpace& space, const std::string& word, double height,
              const Box& within, Point wish) {
  for (const double share : kWordScales) {
    SheetText text = page.measured(word, share * height);
    const auto found =
        space.find({text.room.width + 1.0, text.room.above + text.room.below + 1.0}, wish);
    if (!found || !within.overlaps(*found)) continue;
    text.at = {found->left + 0.5, found->bottom + 0.5 + text.room.below};
    page.add(std::move(text));
    space.take(*found);
    return;
  }
}

}  // namespace

Box miniature_frame(const Tiling& tiling, const Box& room) {
  const Box whole = all_windows(tiling);
  const double scale = reduction_into(whole, room).scale;
  return {room.left, room.top - scale * whole.height(), room.left + scale * whole.width(),
          room.top};
}

void draw_miniature(TextDrawing& page, const Tiling& tiling, const Layout& layout,
                    const Box& frame) {
  const Reduction reduce = reduction_into(all_windows(tiling), frame);
  FreeSpace space(frame, kMiniatureCell);
  const auto pieces = draw_pieces(page, space, layout, reduce);
  for (const Tile& tile : tiling.tiles) {
    const Path window = rectangle(reduce(tile.window));
    page.closed(SheetLayer::Marks, LineRole::Frame, tile_label(tile), window);
    space.take(window);
  }
  for (const Tile& tile : tiling.tiles) {
    const Box window = reduce(tile.window);
    set_word(page, space, tile_label(tile), kTileText, window, middle_of(window));
  }
  for (const auto& [name, box] : pieces) {
    set_word(page, space, title_of(name), kPieceText, box, middle_of(box));
  }
}

}  // namespace blockwright
