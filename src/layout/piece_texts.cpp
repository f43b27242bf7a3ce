#include "piece_texts.hpp"

#include "blockwright/block/kinds.hpp"
#include "text_measure.hpp"
#include "text_placer.hpp"
#include "words.hpp"

#include <array>

namespace blockwright {
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
constexpr std::size_t kMostEstimateLines = 4;
constexpr std::size_t kMostCorrectionLines = 8;
// Clear paper round the label, in mm: much where there is room, else little.
constexpr double kWideMargin = 8.0;
constexpr double kNarrowMargin = 2.5;

using Lines = std::vector<TextPlacer::Line>;

FreeSpace space_inside(const Piece& piece, const Sheet& drawing) {
  const Path outline = flat_outline(piece);
  FreeSpace space(box_of(outline), kPieceCell);
  space.take_outside(outline);
  for (const Stroke& stroke : drawing.strokes) space.take(stroke.path);
  return space;
}

void add_wrapped(Lines& lines, const std::string& text, double height, double room,
                 std::size_t most) {
  auto parts = wrapped(on_one_line(text), height, room);
  if (parts.size() > most) {
    parts.resize(most);
    parts.back() = shortened(parts.back() + " \u2026", height, room);
  }
  for (auto& part : parts) lines.push_back({std::move(part), height});
}

// How much of the label is wanted.
enum class Detail { All, NoEstimates, Short };

Lines label_lines(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
                  Detail detail, double scale, double width) {
  Lines lines;
  lines.push_back({shortened(title_of(piece.name), kTitle * scale, width), kTitle * scale});
  lines.push_back({shortened(on_one_line(notes.client), kName * scale, width), kName * scale});
  const double body = kBody * scale, small = kSmall * scale;
  lines.push_back({shortened("session " + on_one_line(notes.session), body, width), body});
  if (!notes.fitted.empty())
    lines.push_back({shortened(on_one_line(notes.fitted), body, width), body});
  lines.push_back({std::string(cut_instruction(piece.cut_on)), body});
  if (detail == Detail::Short) return lines;
  const std::string style(cut_style_name(options.cut));
  add_wrapped(lines, style + ", " + allowance_text(piece, options, notes.inches), small, width, 4);
  // A card is kept: it says what made it what it is.
  if (options.cut == CutStyle::Card && !notes.corrections.empty()) {
    add_wrapped(lines, "corrected: " + listed(notes.corrections), small, width,
                kMostCorrectionLines);
  }
  if (detail == Detail::All && !notes.estimated.empty()) {
    // A long list stands on the first page; a cut-off one would hide what is missing.
    const std::string count = std::to_string(notes.estimated.size());
    add_wrapped(lines,
                notes.estimated.size() <= kMostEstimatesOnPiece
                    ? "estimated: " + listed(notes.estimated)
                    : "estimated: " + count + " measurements, see the first page",
                small, width, kMostEstimateLines);
  }
  return lines;
}

// The whole label with air round it, or with little, at one size after another; then less of it.
void set_label(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
               TextPlacer& placer, Point wish) {
  for (const Detail detail : {Detail::All, Detail::NoEstimates, Detail::Short}) {
    for (const double scale : kLabelScales) {
      for (const double width : kWidths) {
        const Lines lines = label_lines(piece, options, notes, detail, scale, width * scale);
        if (placer.block(lines, wish, kWideMargin * scale)) return;
        if (placer.block(lines, wish, kNarrowMargin)) return;
      }
    }
  }
  placer.block({{title_of(piece.name), kBody}}, wish, 0.0);
}

void set_edge_texts(const Piece& piece, TextPlacer& placer) {
  for (const Edge& edge : piece.edges) {
    if (edge.role == EdgeRole::Fold) {
      placer.beside(edge.path, plain_name(edge.name) + " \u2013 place on the fold", kAlongLine);
    }
    if (edge.role == EdgeRole::Opening) {
      placer.beside(edge.path, plain_name(edge.name) + " \u2013 opening", kAlongLine);
    }
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
void set_fullness_texts(const Piece& piece, bool inches, TextPlacer& placer) {
  for (const Fullness& f : piece.fullness) {
    const std::string word = f.kind == Fullness::Kind::Gathers ? "gather " : "ease ";
    const std::string text =
        word + length_text(f.to - f.from, inches) + " to " + length_text(f.sewn, inches);
    const Path& edge = piece.edge(f.edge).path;
    if (placer.beside(sub_path(edge, f.from, f.to), text, kAlongLine)) continue;
    placer.block({{text, kAlongLine}}, point_at_length(edge, 0.5 * (f.from + f.to)), 1.0);
  }
}

void set_marked_point_text(const Piece& piece, TextPlacer& placer) {
  if (const Landmark* marked = find_landmark(piece, PointUse::Marked)) {
    placer.block({{plain_name(marked->name), kAlongLine}}, marked->at, 1.0);
  }
}

// Where the label reads best: the middle of the piece, a little below its waist-to-top half.
Point label_wish(const Piece& piece) {
  const Box box = box_of(flat_outline(piece));
  return {box.left + 0.5 * box.width(), box.bottom + 0.45 * box.height()};
}

}  // namespace

void set_piece_texts(const Piece& piece, const PrintOptions& options, const SheetNotes& notes,
                     const std::vector<MovedPoint>& moved, Sheet& drawing) {
  FreeSpace space = space_inside(piece, drawing);
  TextPlacer placer(drawing, piece.name, space);
  set_edge_texts(piece, placer);
  set_line_texts(piece, options, placer);
  set_fullness_texts(piece, notes.inches, placer);
  for (const MovedPoint& point : moved) {
    placer.block({{length_text(distance(point.was, point.is), notes.inches), kAlongLine}}, point.is,
                 1.0);
  }
  if (options.cut != CutStyle::Net) set_marked_point_text(piece, placer);
  set_label(piece, options, notes, placer, label_wish(piece));
}

}  // namespace blockwright
