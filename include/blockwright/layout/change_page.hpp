#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A figure of what was seen, and the words under it.
struct SeenOnPage {
  FigureDrawing figure;
  std::string words;
  std::string number = {};  ///< "3 and 7": of what mends it, where there are several; may be empty
  std::string cure = {};    ///< what mends it, with number and amount: said where figures have a
                            ///< page of their own
};

/// A line of the words on the page.
struct ChangeWords {
  std::string text;
  bool heading = false;
};

/// A place that two versions of a piece have, and how far it moved as both are laid: the named
/// points; "waist dart point", and "waist dart", each leg's end; kBustLineAtSide; the middle of the
/// shoulder seam's outer part, kShoulderSeamPlace, and of the neckline, kNecklinePlace; of each
/// stitch line, by its name, where it lies farthest off the old ones. The farthest first; what did
/// not move is left out.
std::vector<MovedPoint> moved_places(const Piece& piece, const Piece& earlier,
                                     const Placement& lies);
inline constexpr std::string_view kBustLineAtSide = "bust_line";
inline constexpr std::string_view kShoulderSeamPlace = "shoulder seam";
inline constexpr std::string_view kNecklinePlace = "neck edge";

/// An amount that the page shows as it was given, with an arrow at the place that it is measured
/// at.
struct ShownAmount {
  std::string piece;               ///< of `after`
  std::string place;               ///< one of moved_places(); not shown where that did not move
  std::vector<std::string> words;  ///< in lines: "1 cm", "per half"
  /// Of an edge's length with its darts closed, where `place` is an edge: others may have moved it
  /// more elsewhere.
  std::optional<double> share = {};
};

/// What is on a page that shows how pieces changed.
struct ChangePage {
  Pattern before, after;
  Alignment alignment = Alignment::Still;
  std::string title, subtitle;
  std::vector<ChangeWords> words;
  std::vector<SeenOnPage> seen;      ///< each with all its words
  std::string before_is, now_is;     ///< which line is whose: "as drafted", "corrected"
  std::vector<ShownAmount> amounts;  ///< none: an arrow at the largest move with how far it is
  bool every_point = false;          ///< an arrow at every named point that moved
  Unit unit = Unit::Cm;
};

/// More figures have a page of their own.
inline constexpr std::size_t kMostSeenOnPage = 4;
/// So have they where the pieces would else be smaller, if that is enough.
inline constexpr double kMostReducedByFigures = 4.0;
/// A line is heavy where it moved by so many mm: enough to see and to cut. Ours.
inline constexpr double kSeenMove = 1.5;
/// ... or, where the whole change is small, by this share of its largest move. Ours.
inline constexpr double kSeenShare = 0.5;
/// Smaller nothing is seen on it.
inline constexpr double kMostReduced = 12.0;

/// A page, with what has no room on it on those behind it, and how many times smaller than life its
/// pieces are drawn: 1, 2, 2.5, 3 ...
struct DrawnChange {
  PrintPlan plan;
  double reduction = 1.0;
};

/// The page: words and figures above; below them each piece as it was (grey, where that is
/// elsewhere) and as it is (black, heavy where it moved by kSeenMove, or by kSeenShare of the
/// page's largest move if that is less), laid together as `alignment` says, which is said under the
/// piece; the bust line dashed, bust and blade points as crosses; arrows with the amounts. Pieces
/// are drawn at the largest of a few round scales that fits; the scale, and that nothing is cut by
/// it, is on the page. There is no cut line, notch, grain or fold on it. Halves of a piece lie
/// centre to centre; of two of which one alone changed the other is left out, and so is what did
/// not change beside two that did: the page says which. Where pieces would be smaller than
/// kMostReducedByFigures and are larger on the paper turned, it is turned. On a roll it is cut off
/// in the proportions of an A4.
///
/// Figures that have no room have a page of their own behind it, with what mends each; so have
/// words that have none. The pages say so, and are numbered.
///
/// Guarantees: nothing lies nearer than `margin` to the paper's edge; no text lies on another;
/// nothing is left out. Throws UsageError "paper.too_small" where not even kMostReduced fits, or a
/// figure has no room.
DrawnChange change_page(const ChangePage& page, const PrintOptions& options, TextFonts& fonts);

}  // namespace blockwright
