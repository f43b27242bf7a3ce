#include "top_line.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Half of what an arc of a sweetheart turns by: ours, by eye.
constexpr Angle kArcTurn = Angle::degrees(25.0);

// A hollow line up to the end of a strap.
struct Rise {
  Point from;
  Vec leaving;
  Point to;
  Vec strap;  // the way of the strap from there
};

// At the strap it is turned against the straight line by twice as much as where it leaves, but no
// more than half way to the strap: ours, by eye. The handles make its bend even.
Path hollow(const Rise& rise) {
  constexpr Ends fullness{0.6, 0.75};
  const Vec chord = unit(rise.to - rise.from);
  const double leaves = turn_between(rise.leaving, chord).radians();
  const double to_strap = turn_between(chord, rise.strap).radians();
  const double turn =
      std::copysign(std::min(2.0 * std::abs(leaves), 0.5 * std::abs(to_strap)), to_strap);
  return Path({corner_curve(rise.from, rise.leaving, rise.to, rotated(chord, Angle::radians(turn)),
                            fullness)});
}

Path arc_over_bust(Point from, Point to) {
  const Vec chord = to - from;
  return Path({fair_curve(from, rotated(chord, -kArcTurn), to, rotated(chord, kArcTurn))});
}

// The flat end that a strap is set on, square to the strap; of a narrow one both are one point.
struct StrapEnd {
  Point outer, inner;
  Vec along;  // the strap's way up
};

StrapEnd end_of(const TopSpan& span) {
  const Vec up = unit(span.shoulder - span.top);
  const Vec half = 0.5 * span.strap * left_of(up);
  return {span.top - half, span.top + half, up};
}

TopLine with_strap(const TopSpan& span, const StrapEnd& end, const Path& neckline) {
  TopLine line{hollow({span.side, span.leaving, end.outer, end.along}), Stretch{}};
  line.strap->from = length(line.path);
  append_line(line.path, end.inner);
  line.strap->to = length(line.path);
  append(line.path, neckline);
  return line;
}

Path hollow_neckline(const TopSpan& span, const StrapEnd& end) {
  return reversed(hollow({span.centre, -span.arriving, end.inner, end.along}));
}

}  // namespace

TopLine strapped_front(TopShape shape, const TopSpan& span) {
  const StrapEnd end = end_of(span);
  if (shape == TopShape::Straight) {
    return with_strap(span, end, Path::through({end.inner, span.centre}));
  }
  return with_strap(span, end,
                    shape == TopShape::Curved ? hollow_neckline(span, end)
                                              : arc_over_bust(end.inner, span.centre));
}

TopLine strapless_front(TopShape shape, const TopSpan& span) {
  Path inner;
  if (shape == TopShape::Straight) {
    inner = Path::through({span.top, span.centre});
  } else if (shape == TopShape::Curved) {
    const Vec over = unit(unit(span.centre - span.top) + span.arriving);
    inner = Path({fair_curve(span.top, over, span.centre, span.arriving)});
  } else {
    inner = arc_over_bust(span.top, span.centre);
  }
  TopLine line{Path({fair_curve(span.side, span.leaving, span.top, start_tangent(inner))}), {}};
  append(line.path, inner);
  return line;
}

TopLine strapped_back(const TopSpan& span) {
  const StrapEnd end = end_of(span);
  return with_strap(span, end, hollow_neckline(span, end));
}

TopLine strapless_back(const TopSpan& span) {
  return {Path({fair_curve(span.side, span.leaving, span.centre, span.arriving)}), {}};
}

}  // namespace blockwright
