#include "blockwright/block/kinds.hpp"
#include "dress.hpp"
#include "text_flow.hpp"
#include "text_placer.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <sstream>

namespace blockwright {

struct PieceRoom {
  Box box;               // round the outline
  FreeSpace inside;      // off all lines
  FreeSpace near_edges;  // nearer than kLabelFromEdge to the outline is taken
};

namespace {

constexpr std::size_t kMostEstimatesOnPiece = 4;
constexpr double kPieceCell = 1.0;
// Heights of the letters, in mm, at full size.
constexpr double kTitle = 9.0;
constexpr double kName = 5.0;
constexpr double kBody = 3.6;
constexpr double kSmall = 3.0;
constexpr double kAlongLine = 3.2;
// The label is tried at these sizes and widths until it fits.
constexpr std::array<double, 4> kLabelScales = {1.0, 0.85, 0.7, 0.6};
constexpr std::array<double, 3> kWidths = {100.0, 75.0, 55.0};
constexpr std::size_t kMostAllowanceLines = 4;
constexpr std::size_t kMostEstimateLines = 4;
constexpr std::size_t kMostCorrectionLines = 8;
// Clear paper round the label, in mm: much where there is room, else little.
constexpr double kWideMargin = 8.0;
constexpr double kNarrowMargin = 2.5;

using Lines = std::vector<TextPlacer::Line>;

// What is inside the outline, off its lines and clear of the pages' borders.
FreeSpace space_between(const PieceRoom& room, const PageBorders& borders) {
  FreeSpace space = room.inside;
  for (const Tile& tile : borders.tiles) {
    const Box& w = tile.window;
    for (const Box& side : {Box{w.left, w.bottom, w.right, w.bottom},
                            {w.left, w.top, w.right, w.top},
                            {w.left, w.bottom, w.left, w.top},
                            {w.right, w.bottom, w.right, w.top}}) {
      space.take(side);
    }
  }
  for (const Box& box : borders.taken) space.take(box);
  return space;
}

// How much of the label is wanted, how large, and how wide at most.
enum class Detail { All, NoEstimates, Short };
struct LabelSize {
  Detail detail;
  double scale;
  double width;  // mm at full size
};

Lines label_lines(TextFonts& fonts, const Piece& piece, const Layout& layout, LabelSize size) {
  const SheetNotes& notes = layout.notes;
  const double width = size.width * size.scale;
  Lines lines;
  const auto add = [&](const std::string& text, double height) {
    lines.push_back({shortened(fonts, text, height * size.scale, width), height * size.scale});
  };
  const auto add_wrapped = [&](const std::string& text, std::size_t most) {
    const double height = kSmall * size.scale;
    auto parts = wrapped(fonts, text, height, width);
    if (parts.size() > most) {
      parts.resize(most);
      parts.back() = shortened(fonts, parts.back() + " \u2026", height, width);
    }
    for (auto& part : parts) lines.push_back({std::move(part), height});
  };
  const auto add_whole = [&](const std::string& text, double height) {
    for (auto& part : wrapped(fonts, text, height * size.scale, width)) {
      lines.push_back({std::move(part), height * size.scale});
    }
  };
  add_whole(title_of(piece.name), kTitle);
  add(notes.client, kName);
  add("session " + notes.session, kBody);
  if (!notes.fitted.empty()) add(notes.fitted, kBody);
  if (!notes.to_look_at.empty()) {
    add_wrapped(notes.to_look_at, kMostEstimateLines);
    // Of a comparison: "Front laid together at the nape".
    for (const std::string& line : notes.versions) {
      if (line.starts_with(title_of(piece.name) + " ")) add_wrapped(line, kMostEstimateLines);
    }
    return lines;
  }
  add_whole(cut_instruction(piece), kBody);
  if (size.detail == Detail::Short) return lines;
  const CutStyle cut = layout.options.cut;
  add_wrapped(
      std::string(cut_style_name(cut)) + ", " + allowance_text(piece, layout.options, notes.unit),
      kMostAllowanceLines);
  // A card is kept: it says what made it what it is.
  if (cut == CutStyle::Card && !notes.corrections.empty()) {
    add_wrapped("corrected: " + listed(notes.corrections), kMostCorrectionLines);
  }
  if (size.detail == Detail::NoEstimates || notes.estimated.empty()) return lines;
  // A long list stands on the first page; a cut-off one would hide what is missing.
  const std::size_t count = notes.estimated.size();
  add_wrapped("estimated: " + (count <= kMostEstimatesOnPiece
                                   ? listed(notes.estimated)
                                   : std::to_string(count) + " measurements, see the first page"),
              kMostEstimateLines);
  return lines;
}

// The whole label with air round it, or with little, at one size after another; then less of it.
bool set_label(const LaidPiece& laid, const Layout& layout, TextPlacer& placer, Point wish,
               const FreeSpace& room) {
  for (const Detail detail : {Detail::All, Detail::NoEstimates, Detail::Short}) {
    for (const double scale : kLabelScales) {
      for (const double width : kWidths) {
        const Lines lines = label_lines(placer.fonts(), laid.piece, layout, {detail, scale, width});
        if (placer.block(lines, wish, {kWideMargin * scale, kNarrowMargin}, room)) return true;
      }
    }
  }
  return false;
}

// What is said beside an edge; empty if nothing is.
std::string edge_text(const Piece& piece, const Edge& edge, const Layout& layout) {
  if (edge.role == EdgeRole::Fold) return "place on the fold";
  const EdgeNote* note = first_where(layout.notes.edge_notes, [&](const EdgeNote& one) {
    return one.piece == piece.name && one.edge == edge.name;
  });
  const CutStyle cut = layout.options.cut;
  const bool worn = cut == CutStyle::Garment || cut == CutStyle::Toile;
  if (note != nullptr && worn) return note->text;
  return edge.role == EdgeRole::Opening ? "opening" : "";
}

void set_edge_texts(const Piece& piece, const Layout& layout, TextPlacer& placer) {
  for (const Edge& edge : piece.edges) {
    const std::string text = edge_text(piece, edge, layout);
    if (text.empty()) continue;
    placer.beside(edge.path, plain_name(edge.name) + " \u2013 " + text, kAlongLine);
  }
}

void set_line_texts(const Piece& piece, const PrintOptions& options, TextPlacer& placer) {
  if (piece.grainline.a != piece.grainline.b) {
    placer.beside(Path({piece.grainline}), "grain", kAlongLine);
  }
  if (options.cut != CutStyle::Toile) return;
  for (const BalanceLine& line : piece.balance_lines) {
    placer.beside(line.path, plain_name(line.name), kAlongLine);
  }
}

// "gather 12.5 cm to 8 cm" along the stretch between its notches, else as near as there is room.
void set_fullness_texts(const Piece& piece, Unit unit, TextPlacer& placer) {
  for (const Fullness& f : piece.fullness) {
    const std::string word = f.kind == Fullness::Kind::Gathers ? "gather " : "ease ";
    const std::string text = word + length_text(Length::mm(f.to - f.from), unit) + " to " +
                             length_text(Length::mm(f.sewn), unit);
    const Path& edge = piece.edge(f.edge).path;
    if (placer.beside(sub_path(edge, {f.from, f.to}), text, kAlongLine)) continue;
    placer.block({{text, kAlongLine}}, point_at_length(edge, 0.5 * (f.from + f.to)), 1.0);
  }
}

// Of a pair, one piece bears the marks of both halves.
std::string button_text(const ButtonStand& stand) {
  if (stand.buttons.empty()) return "buttonholes";
  return stand.buttonholes.empty() ? "buttons" : "buttonholes right, buttons left";
}

void set_stand_texts(const Piece& piece, TextPlacer& placer) {
  if (!piece.stand) return;
  const ButtonStand& stand = *piece.stand;
  placer.beside(Path({stand.centre}), "centre front", kAlongLine);
  // Beside the marks, not on the facing.
  const Point first =
      stand.buttonholes.empty() ? stand.buttons.front() : stand.buttonholes.front().b;
  placer.block({{button_text(stand), kAlongLine}}, first, 1.0);
}

void set_marked_point_text(const Piece& piece, TextPlacer& placer) {
  if (const Landmark* marked = find_landmark(piece, PointUse::Marked)) {
    placer.block({{plain_name(marked->name), kAlongLine}}, marked->at, 1.0);
  }
}

void set_moves(const LaidPiece& laid, Unit unit, TextPlacer& placer) {
  for (const MovedPoint& point : laid.moved) {
    const Length move = Length::mm(distance(point.was, point.is));
    placer.block({{length_text(move, unit), kAlongLine}}, point.is, 1.0);
  }
}

// Where the label reads best: the middle of the piece, a little below its waist-to-top half.
Point label_wish(const Box& piece) {
  return {piece.left + 0.5 * piece.width(), piece.bottom + 0.45 * piece.height()};
}

Point middle_of_shown(const Box& piece, const Box& window) {
  return {0.5 * (std::max(piece.left, window.left) + std::min(piece.right, window.right)),
          0.5 * (std::max(piece.bottom, window.bottom) + std::min(piece.top, window.top))};
}

bool in_window(const SheetText& text, const Box& window) {
  return text.at.x > window.left && text.at.x < window.right && text.at.y > window.bottom &&
         text.at.y < window.top;
}

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream in(text);
  return {std::istream_iterator<std::string>(in), {}};
}

// The label, then the name on each further page that shows the piece; off the edges if there is
// room.
class PieceNames {
 public:
  PieceNames(const LaidPiece& laid, const FreeSpace& space, Sheet& drawing, TextPlacer& placer)
      : laid_(laid), space_(space), drawing_(drawing), placer_(placer) {}

  void set(const Layout& layout, const PageBorders& borders) {
    const std::size_t label = drawing_.texts.size();
    const Point wish = label_wish(laid_.room->box);
    const bool whole = set_label(laid_, layout, placer_, wish, off_edges(space_)) ||
                       set_label(laid_, layout, placer_, wish, space_);
    if (!whole) placer_.block({{name_, kBody}}, wish, 0.0);
    for (const Tile& tile : borders.tiles) {
      const bool labelled =
          label < drawing_.texts.size() && in_window(drawing_.texts[label], tile.window);
      if (!labelled && shows(tile)) name_on(tile.window);
    }
  }

 private:
  [[nodiscard]] FreeSpace off_edges(FreeSpace space) const {
    space.take(laid_.room->near_edges);
    return space;
  }

  [[nodiscard]] bool shows(const Tile& tile) const {
    return std::find(tile.pieces.begin(), tile.pieces.end(), laid_.piece.name) != tile.pieces.end();
  }

  void name_on(const Box& window) {
    FreeSpace page(space_);
    page.take_outside(window);
    const Point wish = middle_of_shown(laid_.room->box, window);
    if (!set_name(wish, off_edges(page))) set_name(wish, page);
  }

  // In one line, or where that is too long, as across a narrow facing, a word in each.
  bool set_name(Point wish, const FreeSpace& room) {
    return set_lines({name_}, wish, room) || set_lines(words_of(name_), wish, room);
  }

  bool set_lines(const std::vector<std::string>& texts, Point wish, const FreeSpace& room) {
    const auto lines_at = [&](double scale) {
      Lines lines;
      lines.reserve(texts.size());
      for (const std::string& text : texts) lines.push_back({text, kName * scale});
      return lines;
    };
    // Where the smallest has no room, no larger one has.
    if (!room.find(placer_.size_of(lines_at(kLabelScales.back()), kNarrowMargin), wish)) {
      return false;
    }
    return std::any_of(kLabelScales.begin(), kLabelScales.end(), [&](double scale) {
      return placer_.block(lines_at(scale), wish, {kWideMargin * scale, kNarrowMargin}, room);
    });
  }

  const LaidPiece& laid_;
  const std::string name_ = title_of(laid_.piece.name);
  const FreeSpace& space_;
  Sheet& drawing_;
  TextPlacer& placer_;
};

// What is at the outline is taken with what is outside it.
bool follows_outline(const Stroke& stroke) {
  const bool edge = stroke.role == LineRole::StitchLine || stroke.role == LineRole::FoldLine;
  return stroke.layer == SheetLayer::Cut || (stroke.layer == SheetLayer::Stitch && edge);
}

}  // namespace

std::shared_ptr<const PieceRoom> room_on(const Path& outline, const Piece& piece,
                                         const Sheet& lines) {
  const Box box = box_of(outline);
  PieceRoom room{box, FreeSpace(box, kPieceCell), FreeSpace(box, kPieceCell)};
  room.inside.take_outside(outline);
  for (const Stroke& stroke : lines.strokes) {
    if (!follows_outline(stroke)) room.inside.take(stroke.path);
  }
  room.near_edges.take_near(outline, kLabelFromEdge);
  // The fold of a facing that is cut on lies inside the outline.
  for (const Edge& edge : piece.edges) {
    if (edge.finish.how != Finish::FoldedBack) continue;
    room.inside.take(edge.path);
    room.near_edges.take_near(edge.path, kLabelFromEdge);
  }
  return std::make_shared<const PieceRoom>(std::move(room));
}

void set_piece_texts(const LaidPiece& laid, const Layout& layout, const PageBorders& borders,
                     TextFonts& fonts, Sheet& drawing) {
  const Piece& piece = laid.piece;
  const Unit unit = layout.notes.unit;
  FreeSpace space = space_between(*laid.room, borders);
  TextDrawing texts(drawing, fonts, piece.name);
  TextPlacer placer(texts, space);
  set_moves(laid, unit, placer);
  if (!layout.compared) {
    set_edge_texts(piece, layout, placer);
    set_line_texts(piece, layout.options, placer);
    set_stand_texts(piece, placer);
    set_fullness_texts(piece, unit, placer);
  }
  const CutStyle cut = layout.options.cut;
  if (cut == CutStyle::Toile || cut == CutStyle::Card) set_marked_point_text(piece, placer);
  PieceNames(laid, space, drawing, placer).set(layout, borders);
}

}  // namespace blockwright
