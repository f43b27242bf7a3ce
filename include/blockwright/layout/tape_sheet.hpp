#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A measurement on the form.
struct TapeSheetRow {
  int number = 0;         ///< its place in the order of a session
  std::string name = {};  ///< "bust girth"
  std::string how = {};   ///< how it is taken
  std::string last = {};  ///< "92.5 cm on 2026-03-14"; may be empty
  bool angle = false;     ///< its boxes bear a degree sign
  bool early = false;     ///< among those that are enough for a first block: its number is ringed
};

/// A figure and the measurements that it shows.
struct TapeSheetGroup {
  TapeFigure figure = TapeFigure::Girths;
  std::vector<TapeSheetRow> rows = {};
};

/// A point of the body that measurements begin or end at.
struct TapeSheetPoint {
  std::string name = {};  ///< as points_of() calls it
  std::string how = {};   ///< how it is found
};

/// What is on a form for a tape session. What is empty is left to be written.
struct TapeSheet {
  std::string client = {}, date = {}, by = {};
  std::vector<std::string> units = {};  ///< to tick one of; a single one is said
  std::vector<std::string> cautions = {};
  std::vector<TapeSheetPoint> points = {};  ///< lettered in this order; none: no picture of them
  std::vector<TapeSheetGroup> groups = {};
  std::string foot = {};  ///< what to do with the form, and the program's version
};

/// The form on pages: title, places for name, date and who holds the tape, the cautions, the points
/// to mark, then each figure with a table beside it: number, name, how it is taken and three boxes
/// for readings. A roll takes it on one page.
///
/// Guarantees: nothing lies nearer than `margin` to the paper's edge; no text lies on another text
/// or on a line. Throws UsageError "paper.too_small" for a paper that does not take it.
PrintPlan tape_sheet(const TapeSheet& form, const PrintOptions& options, TextFonts& fonts);

}  // namespace blockwright
