#include "blockwright/figure/seen_figure.hpp"

#include "blockwright/geometry/intersections.hpp"
#include "on_paper.hpp"
#include "seen_faults.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// In body mm: half the width of a loose fold, an arrow's head, and half its width in shares of it.
constexpr double kFoldHalf = 5.5;
constexpr double kArrowHead = 13.0;
constexpr double kHeadHalf = 0.42;

/// The parts of a line between two heights.
std::vector<Path> between_heights(const Path& path, const Box& frame) {
  std::vector<double> cuts = {0.0, length(path)};
  for (const double height : {frame.bottom, frame.top}) {
    for (const LineCrossing& at : intersections(path, {0.0, height}, {1.0, 0.0})) {
      cuts.push_back(nearest(path, at.point).along);
    }
  }
  std::sort(cuts.begin(), cuts.end());
  std::vector<Path> inside;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const double y = point_at_length(path, 0.5 * (cuts[i] + cuts[i + 1])).y;
    if (y <= frame.bottom || y >= frame.top || cuts[i + 1] - cuts[i] < 1e-6) continue;
    inside.push_back(sub_path(path, {cuts[i], cuts[i + 1]}));
  }
  return inside;
}

Path bowed(Point from, Point to, double bow) {
  if (bow == 0.0) return Path::through({from, to});
  const Vec across = bow * left_of(unit(to - from));
  const Point through[] = {from, midpoint(from, to) + across, to};
  return smooth_through(through, {});
}

/// A loose fold bulges to both sides.
std::vector<Path> fold(Point from, Point to) {
  return {bowed(from, to, kFoldHalf), bowed(from, to, -kFoldHalf)};
}

std::vector<Path> arrow_of(Point from, Point to) {
  const Vec back = -kArrowHead * unit(to - from), aside = kHeadHalf * left_of(back);
  return {Path::through({from, to}), Path::through({to + back + aside, to, to + back - aside})};
}

std::vector<Path> strokes_of(const SeenMark& mark) {
  switch (mark.kind) {
    case SeenMark::Kind::Crease:
      return {Path::through({mark.from, mark.to})};
    case SeenMark::Kind::Fold:
      return fold(mark.from, mark.to);
    case SeenMark::Kind::Edge:
      return {bowed(mark.from, mark.to, mark.bow)};
    case SeenMark::Kind::Arrow:
      return arrow_of(mark.from, mark.to);
  }
  return {};
}

/// Which halves of the drawing a mark is on: as the table has it, mirrored, or both.
enum class Halves { AsDrawn, Mirrored, Both };

/// The table has marks of both sides on the right of the drawing, and those of rows of one side on
/// the left: from in front, her right.
Halves halves_of(const SeenMark& mark, const SeenRow& seen, TapeFigure view) {
  const bool at_right = (seen.side == BodySide::Left) == (view == TapeFigure::Front);
  if (mark.sides == BodyLine::Sides::One) {
    const bool of_one_side = fitting_row(seen.row).stage == kOneSideStage;
    return of_one_side && seen.side == BodySide::Left ? Halves::Mirrored : Halves::AsDrawn;
  }
  if (seen.side == BodySide::Both) return Halves::Both;
  return at_right ? Halves::AsDrawn : Halves::Mirrored;
}

/// The figure in the making.
class SeenSheet {
 public:
  SeenSheet(TapeFigure view, double scale) : frame_(toile_frame(view)), paper_(frame_, scale) {
    drawing_.width = scale * frame_.width();
    drawing_.height = scale * frame_.height();
  }

  void draw(FigureInk ink, const Path& path, Halves halves) {
    for (const Path& part : between_heights(path, frame_)) {
      if (halves != Halves::Mirrored) drawing_.lines.push_back({ink, paper_(part)});
      if (halves == Halves::AsDrawn) continue;
      drawing_.lines.push_back({ink, paper_(placed(part, Placement::mirror()))});
    }
  }

  [[nodiscard]] FigureDrawing done() && { return std::move(drawing_); }

 private:
  Box frame_;
  OnPaper paper_;
  FigureDrawing drawing_;
};

}  // namespace

FigureDrawing seen_figure(const SeenRow& seen, double scale) {
  const SeenFault& fault = fault_of(seen);
  SeenSheet sheet(fault.view, scale);
  for (const BodyLine& line : body_in_toile(fault.view)) {
    sheet.draw(line.ink, smooth_through(line.through, line.ends),
               line.sides == BodyLine::Sides::One ? Halves::AsDrawn : Halves::Both);
  }
  for (const SeenMark& mark : fault.marks) {
    const Halves halves = halves_of(mark, seen, fault.view);
    for (const Path& stroke : strokes_of(mark)) sheet.draw(FigureInk::Seen, stroke, halves);
  }
  return std::move(sheet).done();
}

}  // namespace blockwright
