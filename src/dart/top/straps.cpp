#include "straps.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// A strap is cut this much shorter than its way, so that it holds. Common practice, no source.
constexpr double kStrapHolds = 0.98;

Edge straight(const char* name, EdgeRole role, const Segment& line) {
  return {name, role, Path({line}), ""};
}

}  // namespace

double way_over_shoulder(const StrapEnds& ends) {
  constexpr int places = 200;
  const Path &front = ends.front.closed.shoulder(), &back = ends.back.closed.shoulder();
  double shortest = 0.0;
  for (int i = 0; i <= places; ++i) {
    const double share = static_cast<double>(i) / places;
    const double way =
        distance(ends.front.span.top, point_at_length(front, share * length(front))) +
        distance(ends.back.span.top, point_at_length(back, share * length(back)));
    if (i == 0 || way < shortest) shortest = way;
  }
  return shortest;
}

Piece strap_piece(const StrapDesign& design, const StrapEnds& ends, std::string_view ending) {
  const double wide = 2.0 * design.width;
  const double tall = kStrapHolds * way_over_shoulder(ends) + 2.0 * kStrapSewnIn + design.adjust;
  const Point a{0.0, 0.0}, b{wide, 0.0}, c{wide, tall}, d{0.0, tall};
  Piece strap;
  strap.name = "strap" + std::string(ending);
  strap.edges = {straight("front_end", EdgeRole::FreeEdge, {a, b}),
                 straight("long_edge", EdgeRole::Seam, {b, c}),
                 straight("back_end", EdgeRole::FreeEdge, {c, d}),
                 straight("other_long_edge", EdgeRole::Seam, {d, a})};
  // Where it is folded lengthwise; the label has its room beside the lower half.
  strap.notches = {{"fold", "front_end", design.width, 1, {}, {}},
                   {"fold_end", "back_end", design.width, 1, {}, {}}};
  constexpr double grain_from = 0.55, grain_to = 0.95;
  strap.grainline = {{design.width, grain_from * tall}, {design.width, grain_to * tall}};
  strap.cut_on = ending.empty() ? CutOn::Pair : CutOn::One;
  return strap;
}

}  // namespace blockwright
