#pragma once

#include "blockwright/base/length.hpp"
#include "blockwright/layout/sheet.hpp"
#include "blockwright/layout/versions.hpp"
#include "blockwright/pattern/edge_band.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "blockwright/text/units.hpp"

#include <algorithm>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A paper to print on. Roll paper has a width and takes the length it needs.
struct Paper {
  std::string name;                   ///< "a4", "letter", "roll:914", "300x400"
  Length width = Length::mm(210.0);   ///< portrait
  Length height = Length::mm(297.0);  ///< 0 for roll paper
  [[nodiscard]] bool is_roll() const { return height == Length(); }
  [[nodiscard]] Length shorter() const { return is_roll() ? width : std::min(width, height); }
  [[nodiscard]] Length longer() const { return std::max(width, height); }
};

/// Reads a paper's name: a4 a3 a2 a1 a0 letter legal tabloid roll:WIDTH WIDTHxHEIGHT (mm; both at
/// least 100 and at most 5000). Throws UsageError "paper.unknown" otherwise.
/// Sources: ISO 216; ANSI/ASME Y14.1 (from memory).
Paper paper_named(std::string_view name);

/// What the pieces are dressed for.
enum class CutStyle {
  Toile,    ///< allowance at shoulder, side and centre-back opening; balance lines for the fitting
  Card,     ///< net, holes at the dart points: the block that is kept
  Net,      ///< the bare stitch lines
  Garment,  ///< with what the style says of each edge: to be cut from good cloth
};

/// "toile", "card", "net" or "garment".
std::string_view cut_style_name(CutStyle cut);

/// What the person wants on the paper.
struct PrintOptions {
  CutStyle cut = CutStyle::Toile;
  Length allowance = Length::mm(20.0);  ///< at the seams of a toile
  Paper paper;
  Length margin = Length::mm(10.0);   ///< at the paper's edge; nothing is printed there
  Length overlap = Length::mm(10.0);  ///< that neighbouring tiles share
};

/// The line to cut the piece along, in its own frame: with what the options or the style say of its
/// allowances. See cut_line() for what holds of it.
Path outline_to_cut(const Piece& piece, const PrintOptions& options);

/// What is said beside an edge of a piece: "zip 40 cm".
struct EdgeNote {
  std::string piece, edge, text;
};

/// Words that go on the paper besides the pieces.
struct SheetNotes {
  std::string client;                    ///< name as the client file has it; UTF-8
  std::string garment;                   ///< "bodice block", or the style's name; may be empty
  std::string session;                   ///< date of the session
  std::string version;                   ///< of the program
  std::vector<std::string> ease;         ///< one line each
  std::vector<std::string> estimated;    ///< measurements that were not taped, with their doubt
  std::string fitted;                    ///< "version 2, toile 1 of 2026-03-21"; empty: not fitted
  std::vector<std::string> corrections;  ///< of fittings, one line each
  std::vector<std::string> look_first;   ///< on the body, because of them; on a toile
  std::vector<std::string> made;         ///< how the pieces were made from the block, one line each
  std::vector<std::string> versions;     ///< of a comparison: which lines are whose
  std::string to_look_at;                ///< what a sheet shows that is not for cutting; else empty
  std::vector<std::string> cautions;     ///< shown on the first page
  std::vector<std::string> to_cut;       ///< of a garment, by material, one line each
  std::vector<std::string> to_buy;
  std::vector<std::string> to_sew;   ///< in order
  std::vector<EdgeNote> edge_notes;  ///< of a garment
  Unit unit = Unit::Cm;              ///< of lengths on the paper
};

/// Where a piece has room for texts, whatever pages it is printed on.
struct PieceRoom;

/// A piece ready for paper: its lines in its own frame, and where that frame's origin lies on the
/// sheet.
struct LaidPiece {
  Piece piece;
  Sheet lines;  ///< width and height are not set
  std::vector<MovedPoint> moved;
  std::shared_ptr<const PieceRoom> room;  ///< found once for all drawings
  Vec at;
};

/// Pieces with allowance, notches and grain, side by side in true size. Their texts are set when it
/// is known where pages part.
struct Layout {
  PrintOptions options;
  SheetNotes notes;
  std::vector<LaidPiece> pieces;
  double width = 0.0;
  double height = 0.0;
  bool shows_previous = false;
  bool compared = false;  ///< nothing is cut by it
};

/// Pieces keep their grain upright; they are at least 10 mm apart and nothing overlaps.
/// The stitch lines and darts of a previous version lie under each piece on a layer of their own; a
/// panel lies over the piece that it was cut from. Of a comparison there are the stitch lines
/// alone, what moved heavier, with arrows where named points moved: nothing to cut by. A band is
/// drawn as a line to either side of its own, among the marks.
Layout lay_out(const Pattern& pattern, const PrintOptions& options, const SheetNotes& notes,
               const PreviousVersion* previous = nullptr, std::span<const EdgeBand> bands = {});

/// The whole layout as one drawing, with its texts measured in the fonts.
Sheet sheet_of(const Layout& layout, TextFonts& fonts);

/// One printed page: a drawing of its own in page millimetres and, unless it is the first page, the
/// window of the sheet that it shows.
struct Page {
  std::string label;  ///< "map", "A1", "A2", "B1" ... row letter, column number
  double width = 0.0;
  double height = 0.0;
  Sheet furniture;  ///< frame, label, match marks, test squares, map, texts: in page millimetres
  std::optional<Box> window;  ///< the part of the sheet that shows, in sheet mm
  Point window_at;            ///< where the window's lower left corner lies on the page
};

/// Pages that together carry one sheet.
struct PrintPlan {
  std::string title;
  Sheet sheet;
  std::vector<Page> pages;
};

/// What is printed on the pages besides the sheet, as one drawing: each page below the one before.
Sheet pages_in_one(const PrintPlan& plan);

/// Splits a layout over pages: first a map page with test squares (100 mm and 4 in), piece list,
/// notes and cautions, then the tiles, rows from the top (A, B ...), columns from the left (1, 2
/// ...), blank ones left out. Landscape or portrait, whichever takes fewer pages. Tiles overlap by
/// `overlap`, carry match marks, their label, their neighbours' labels, the names of the pieces
/// that they show and a small test square.
///
/// Guarantees: 1. every point of every stroke, and every piece, lies in some window; 2. windows lie
/// `margin` inside the paper; 3. neighbouring windows share exactly `overlap` of the sheet; 4. no
/// text is cut by the edge of a window.
PrintPlan tile(const Layout& layout, TextFonts& fonts);

/// The layout on one page: a large paper or a roll, with the test squares and notes beside the
/// pieces. Throws UsageError "paper.too_small" if it does not fit a sheet paper.
PrintPlan one_page(const Layout& layout, TextFonts& fonts);

}  // namespace blockwright
