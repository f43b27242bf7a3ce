#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A figure of what was seen, and the words under it.
struct SeenOnPage {
  FigureDrawing figure;
  std::string words;
};

/// A line of the words on the page.
struct ChangeWords {
  std::string text;
  bool heading = false;
};

/// What is on one page that shows how pieces changed.
struct ChangePage {
  Pattern before, after;
  Alignment alignment = Alignment::Still;
  std::string title, subtitle;
  std::vector<ChangeWords> words;
  std::vector<SeenOnPage> seen;   ///< at most kMostSeenOnPage are drawn, on small paper fewer
  std::string before_is, now_is;  ///< which line is whose: "as drafted", "corrected"
  bool every_point = false;  ///< an arrow at every named point that moved, not the largest only
  Unit unit = Unit::Cm;
};

inline constexpr std::size_t kMostSeenOnPage = 4;
/// Smaller nothing is seen on it.
inline constexpr double kMostReduced = 12.0;

/// A page, and how many times smaller than life its pieces are drawn: 1, 2, 2.5, 3 ...
struct DrawnChange {
  PrintPlan plan;
  double reduction = 1.0;
};

/// The page: words and figures above; below them each piece as it was (grey, where that is
/// elsewhere) and as it is (black, heavy where it moved), laid together as `alignment` says, which
/// is said under the piece; an arrow at the largest move with how far it is. Pieces are drawn at
/// the largest of a few round scales that fits; the scale, and that nothing is cut by it, is on the
/// page. There is no cut line, notch, grain or fold on it. On a roll it is cut off in the
/// proportions of an A4.
///
/// Guarantees: nothing lies nearer than `margin` to the paper's edge; no text lies on another;
/// words that have no room are left out, and it is said how many. Throws UsageError
/// "paper.too_small" where not even kMostReduced fits.
DrawnChange change_page(const ChangePage& page, const PrintOptions& options, TextFonts& fonts);

}  // namespace blockwright
