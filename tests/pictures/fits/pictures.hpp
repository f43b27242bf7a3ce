#pragma once

#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "diagram.hpp"

#include <string>
#include <vector>

namespace blockwright_pictures {

/// What of a piece a picture shows.
enum class Part {
  Whole,
  Upper,    ///< from a little below the underarm up
  Lower,    ///< from the across line down
  Neck,     ///< centre and side neck with most of the shoulder
  Armhole,  ///< shoulder, armhole and the upper end of the side seam
  Side,     ///< the side seam and what lies next to it
};

/// Something that a picture points at, with a label `off` the place, in the diagram's units. In the
/// words "{}" stands for what the program measures there on the flat piece, "{asked}" for the
/// amount of the picture, both in cm.
struct Mark {
  enum class On {
    Landmark,   ///< how far it moved, with an arrow
    Line,       ///< the middle of an edge: by how much its sewn length changed
    Mouth,      ///< a dart's mouth: by how much its width changed
    DartPoint,  ///< where a dart's stitching ends: how far that moved, with an arrow
    Place,      ///< a landmark that is only named
  };
  On on = On::Landmark;
  const char* what = "";
  blockwright::Vec off;
  std::string words;
};

/// A piece, or a part of it, before and after.
struct View {
  const char* piece = "";
  Part part = Part::Whole;
  std::vector<Mark> marks;
};

/// The picture of one row of the fitting catalogue.
struct FitPicture {
  int row = 0;
  double by = 0.0;         ///< mm, as the row counts it
  const char* words = "";  ///< as one types it, without the amount
  const char* read = "";   ///< how the amount is read, where it is not a plain length
  std::vector<View> views;
  const char* place = "";
  blockwright::BodySide side = blockwright::BodySide::Both;
  const char* person = "ondine-marsh";
};

/// Rows 1 to 18 with 50, 19 to 32 with 49, and 33 to 48.
std::vector<FitPicture> upper_pictures();
std::vector<FitPicture> middle_pictures();
std::vector<FitPicture> lower_pictures();

inline constexpr double kFitWidth = 780.0;
inline constexpr double kFitHeight = 340.0;

/// Draws the rows of the picture into a diagram of that size. Requires: `block` is drafted.
void draw_fit(Diagram& d, const FitPicture& picture, const blockwright::Pattern& block);

/// An arrow, in the diagram's units.
void draw_arrow(Diagram& d, blockwright::Point from, blockwright::Point to);

/// Half a front as it is seen on the body, from the waist at the centre to the neck: no person's.
blockwright::Path half_bodice();

/// A row's faults as they are seen on the body: one of each direction and place that has its own.
Diagram seen_picture(const blockwright::FittingRow& row);

inline constexpr double kFoldsWidth = 780.0;
inline constexpr double kFoldsHeight = 424.0;

/// Draws how folds of a toile are read into a diagram of that size: a plain bodice for each kind.
void draw_folds(Diagram& d);

}  // namespace blockwright_pictures
