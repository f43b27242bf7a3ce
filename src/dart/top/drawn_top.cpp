#include "drawn_top.hpp"

#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/hem.hpp"
#include "drawn_edges.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace blockwright {
namespace {

// --- the usual design of each shape --------------------------------------------------------------

struct UsualTop {
  double centre_share, strapped_share, strapless_share;
};

// By eye, ours.
constexpr std::array<UsualTop, 3> kUsualTops = {{{0.40, 0.0, 0.0},      // straight
                                                 {0.30, 0.42, 0.36},    // curved
                                                 {0.26, 0.42, 0.36}}};  // sweetheart
// Ours, by eye: a strap needs little of a rise at the back, ...
constexpr double kUsualBackShare = 0.12;
// ... and does not slide off where it is nearer to the centre there. Common practice, no source:
// 15 to 30 mm.
constexpr double kUsualNearer = 20.0;

const UsualTop& usual_top(TopShape shape) { return kUsualTops.at(static_cast<std::size_t>(shape)); }

[[noreturn]] void refuse_design(const char* what, const char* how) {
  refuse(kTopEdgeCode, "top edge", what, how);
}

// --- heights -------------------------------------------------------------------------------------

Point bust_point_of(const Top& top, const ClosedTop& closed) {
  const Point apex = apex_point(top.open.piece);
  return midpoint(apex, closed.at_centre()(apex));
}

// From the centre's upper end down to the level of the bust point.
double down_to_bust(const Top& top) {
  return top.upper_centre().start().y - apex_point(top.open.piece).y;
}

// Of the underarm next to the centre: as high over the bust line as at the side, whose part of the
// piece a dart may have turned.
double underarm_level(const Top& top) {
  const Point underarm = top.upper_side().end();
  const BalanceLine* found = find_line(top.open.piece, LineUse::Bust);
  if (found == nullptr) return underarm.y;
  const Path& line = found->path;
  return line.start().y + dot(underarm - line.end(), left_of(end_tangent(line)));
}

// --- limits --------------------------------------------------------------------------------------

void require_cut(const Top& top, const Bounded& b) {
  require_bounded(kTopEdgeCode, top.piece(), b);
}

void require_under_underarm(const Top& top, double under) {
  const OpenEdge& side = top.open.edges[top.side()];
  constexpr const char* key = "under_underarm";
  constexpr const char* what = "its height at the side, down from the underarm,";
  require_cut(top, {key, what, under, closed_length(side) - kLeastUnderHem,
                    "the side keeps at least " + Length::mm(kLeastUnderHem) +
                        ", and a higher edge cuts into the arm",
                    -kMostRaised});
  if (side.darts.empty()) return;
  require_cut(top,
              {key, what, under, length(top.upper_side()) - kFromCorner,
               "the dart " + side.darts.back().name + " opens there: move it first", -kMostRaised});
}

// How deep the centre may be cut, and how its height is told: `top` mm at its upper end, less
// downwards where `sign` is 1.
struct CentreHeight {
  const char* key;
  const char* what;
  double down;   // from the upper end of the centre
  double value;  // as told
  double sign;   // of the value upwards
};

void require_centre(const Top& top, const CentreHeight& height) {
  const OpenEdge& centre = top.open.edges[top.centre()];
  const auto judge = [&](double most_down, const Wording& why) {
    const double at_top = height.value + height.sign * height.down;
    const double at_most = at_top - height.sign * most_down;
    require_cut(top, {height.key, height.what, height.value, std::max(at_top, at_most), why,
                      std::min(at_top, at_most)});
  };
  judge(closed_length(centre) - kLeastCentreLeft,
        "it lies under the neck, and the centre keeps at least " + Length::mm(kLeastCentreLeft));
  if (centre.darts.empty()) return;
  judge(length(top.upper_centre()) - kFromCorner,
        "the dart " + centre.darts.front().name + " opens there: move it first");
}

TopCut front_cut(const Top& top, const TopEdgeDesign& design) {
  const double over = over_bust_level(top, design);
  const TopCut cut{design.under_underarm, down_centre_front(top, design)};
  require_under_underarm(top, cut.under_underarm);
  require_centre(top, {design.centre_share ? "centre_share" : "over_bust_level",
                       "its height at the centre front, over the level of the bust point,",
                       cut.down_centre, over, 1.0});
  return cut;
}

TopCut back_cut(const Top& top, const TopEdgeDesign& design) {
  const TopCut cut{design.under_underarm, down_centre_back(top, design)};
  require_under_underarm(top, cut.under_underarm);
  require_centre(top, {"back_depth", "its depth at the centre back, under the underarm,",
                       cut.down_centre, design.back_depth, -1.0});
  return cut;
}

// --- between what it runs ------------------------------------------------------------------------

double strap_end_of(const TopEdgeDesign& design) {
  if (!design.straps || design.straps->width < kFlatStrap) return 0.0;
  return design.straps->width;
}

TopSpan span_between(const Top& top, const TopCut& cut, const ClosedTop& closed) {
  const TopEnd side = side_end(top, cut), centre = centre_end(top, cut);
  TopSpan span;
  span.side = side.at;
  span.leaving = left_of(side.along);
  span.centre = closed.at_centre()(centre.at);
  span.arriving = -left_of(closed.at_centre()(centre.along));
  span.shoulder = closed.middle_of_shoulder();
  return span;
}

double fall_of(const TopSpan& span) { return dot(span.top - span.centre, right_of(span.arriving)); }

void require_fall(const Top& top, const TopSpan& span) {
  const double fall = fall_of(span);
  if (fall >= kLeastFall) return;
  refuse(kTopEdgeCode, top.piece(),
         "over the bust its edge would lie " + Length::mm(fall) + " over its centre; it needs " +
             Length::mm(kLeastFall),
         "draw it at least " + Length::mm(kLeastFall - fall) +
             " lower at the centre or higher over the bust");
}

void require_off_centre(const Top& top, const TopSpan& span) {
  const double off = strap_off_centre(span);
  if (off >= kLeastStrapOffCentre) return;
  refuse(kTopEdgeCode, top.piece(),
         "its strap would be set " + Length::mm(off) + " off the centre; it keeps " +
             Length::mm(kLeastStrapOffCentre),
         "set it less near to the centre at the back", "back_nearer");
}

// The highest place over the bust, or the middle of the strap.
Point front_top(const Top& top, const TopEdgeDesign& design, const TopSpan& span, Point bust) {
  const Vec way = span.shoulder - bust;
  if (design.shape == TopShape::Straight) {
    const auto level = lines_meet(span.centre, span.arriving, bust, way);
    require(level.has_value(), "the shoulder lies over the bust point");
    return *level;
  }
  const UsualTop& usual = usual_top(design.shape);
  const double share =
      design.top_share.value_or(design.straps ? usual.strapped_share : usual.strapless_share);
  const double over = design.over_bust_point.value_or(share * norm(way));
  require_cut(top, {design.top_share ? "top_share" : "over_bust_point",
                    "its height over the bust point, towards the middle of the shoulder,", over,
                    norm(way) - kLeastUnderShoulder,
                    "it keeps " + Length::mm(kLeastOffBust) + " off the bust point and " +
                        Length::mm(kLeastUnderShoulder) + " off the shoulder",
                    kLeastOffBust});
  return bust + over * unit(way);
}

// --- straps beside darts -------------------------------------------------------------------------

// How far the strap has to go out, so that no dart ends in it or next to it.
double out_of_darts(const ClosedTop& closed, const TopLine& line) {
  constexpr double beside = 8.0;  // ours: a notch and a seam need the room
  if (!line.strap) return 0.0;
  double out = 0.0;
  for (const double at : closed.crossings(line.path)) {
    if (at < line.strap->from - beside || at > line.strap->to + beside) continue;
    out = std::max(out, beside - (at - line.strap->to));
  }
  return out;
}

void require_off_corners(const DrawnTop& drawn) {
  const double whole = length(drawn.line.path);
  for (const double at : drawn.closed.crossings(drawn.line.path)) {
    const bool by_strap = drawn.line.strap && at > drawn.line.strap->from - kFromCorner &&
                          at < drawn.line.strap->to + kFromCorner;
    if (at >= kFromCorner && at <= whole - kFromCorner && !by_strap) continue;
    refuse(kTopEdgeCode, drawn.top.piece(), "a dart would end in a corner of its top edge",
           "move the dart first");
  }
}

// Draws it, with the strap moved out until no dart is in its way: a leaning dart comes after it.
template <class Draw>
void draw_clear(DrawnTop& drawn, Draw&& draw) {
  constexpr int tries = 4;
  const TopSpan wanted = drawn.span;
  const Vec way = right_of(unit(wanted.shoulder - wanted.top));
  drawn.line = draw(drawn.span);
  for (int i = 0; i < tries; ++i) {
    const double out = out_of_darts(drawn.closed, drawn.line);
    if (out == 0.0) break;
    drawn.moved_out += out;
    drawn.span.top = wanted.top + drawn.moved_out * way;
    drawn.span.shoulder = wanted.shoulder + drawn.moved_out * way;
    drawn.line = draw(drawn.span);
  }
  require_off_corners(drawn);
}

}  // namespace

double strap_off_centre(const TopSpan& span) { return dot(span.centre - span.top, span.arriving); }

void require_top_design(const TopEdgeDesign& design) {
  if (design.over_bust_level && design.centre_share) {
    refuse_design("its height at the centre is given twice",
                  "give one of \"over_bust_level\" and \"centre_share\"");
  }
  if (design.over_bust_point && design.top_share) {
    refuse_design("its height over the bust is given twice",
                  "give one of \"over_bust_point\" and \"top_share\"");
  }
  if (design.shape == TopShape::Straight && (design.over_bust_point || design.top_share)) {
    refuse_design("a straight edge has one height in front, that of its centre",
                  "leave \"over_bust_point\" and \"top_share\" out, or draw it curved");
  }
  if (!design.straps) return;
  require_bounded(kTopEdgeCode, "straps",
                  {"straps", "a strap's width", design.straps->width, kMostStrapWidth,
                   "narrower cuts in, wider is no strap", kLeastStrapWidth});
  require_bounded(kTopEdgeCode, "straps",
                  {"straps", "what a strap is longer by, to be tried on,", design.straps->adjust,
                   kMostAdjust, "more is cloth thrown away"});
}

double over_bust_level(const Top& top, const TopEdgeDesign& design) {
  if (design.over_bust_level) return *design.over_bust_level;
  return design.centre_share.value_or(usual_top(design.shape).centre_share) * down_to_bust(top);
}

double down_centre_front(const Top& top, const TopEdgeDesign& design) {
  return down_to_bust(top) - over_bust_level(top, design);
}

double down_centre_back(const Top& top, const TopEdgeDesign& design) {
  return top.upper_centre().start().y - underarm_level(top) + design.back_depth;
}

DrawnTop drawn_front(const Top& top, const TopEdgeDesign& design) {
  const TopCut cut = front_cut(top, design);
  DrawnTop drawn{top, cut, ClosedTop(top, cut), {}, {}};
  drawn.span = span_between(top, cut, drawn.closed);
  drawn.span.strap = strap_end_of(design);
  drawn.span.top = front_top(top, design, drawn.span, bust_point_of(top, drawn.closed));
  if (design.shape == TopShape::Straight) {
    // Its strap goes square to it.
    drawn.span.shoulder =
        drawn.span.top + norm(drawn.span.shoulder - drawn.span.top) * right_of(drawn.span.arriving);
  } else {
    require_fall(top, drawn.span);
  }
  draw_clear(drawn, [&](const TopSpan& span) {
    return design.straps ? strapped_front(design.shape, span) : strapless_front(design.shape, span);
  });
  return drawn;
}

DrawnTop drawn_back(const Top& top, const TopEdgeDesign& design, double front_strap) {
  const TopCut cut = back_cut(top, design);
  DrawnTop drawn{top, cut, ClosedTop(top, cut), {}, {}};
  TopSpan& span = drawn.span;
  span = span_between(top, cut, drawn.closed);
  if (!design.straps) {
    draw_clear(drawn, strapless_back);
    return drawn;
  }
  span.strap = strap_end_of(design);
  const Vec up = right_of(span.arriving);
  const Point level =
      drawn.closed.at_centre()(Point{centre_end(top, cut).at.x, underarm_level(top)});
  const double off = front_strap - design.back_nearer.value_or(kUsualNearer);
  const double to_shoulder = dot(span.shoulder - level, up);
  const double rise = design.back_share.value_or(kUsualBackShare) * to_shoulder;
  require_cut(top, {"back_share", "the height of its straps, over the underarm's level,", rise,
                    to_shoulder - kLeastUnderShoulder,
                    "it keeps " + Length::mm(kLeastUnderShoulder) + " off the shoulder"});
  span.top = level - off * span.arriving + rise * up;
  require_off_centre(top, span);
  draw_clear(drawn, strapped_back);
  return drawn;
}

}  // namespace blockwright
