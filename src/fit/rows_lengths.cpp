#include "blockwright/base/number_text.hpp"
#include "blockwright/fit/moves.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"
#include "refuse.hpp"
#include "rows.hpp"
#include "waist_fit.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Where the waist is taken in, in this order: at each side edge, in the back waist darts
// together, in the front ones together; up to so many mm. Common practice, no source.
constexpr double kMostAtSide = 8.0;
constexpr double kMostInBackDarts = 40.0;
constexpr double kMostInFrontDarts = 45.0;
// A centre front seam comes in by this share at the bust line of what it does at the waist. Common
// practice, no source (3 to 10 mm against 5 to 10).
constexpr double kCentreFrontAtBust = 0.65;
constexpr double kCentreHandle = 0.35;

// 39: a strip across both pieces half way from underarm to waist.
void lengthen_below_bust(HalfBlock& half, const RowAsk& ask) {
  half.front = with_strip(half.front, ask.by);
  half.back = with_strip(half.back, ask.by);
}

std::vector<Law> below_bust_laws(const HalfBlock& before, const RowAsk& ask) {
  const auto side_gain = [&](const Opened& open) {
    const Vec side = corner_of(open, Corner::Underarm) - corner_of(open, Corner::SideWaist);
    return norm(side + Vec{0.0, ask.by}) - norm(side);
  };
  return {{"front.centre_front", ask.by, LawKind::Exact},
          {"back.centre_back", ask.by, LawKind::Exact},
          {"front.side", side_gain(before.front), LawKind::Exact},
          {"back.side", side_gain(before.back), LawKind::Exact},
          {"front.armhole", 0.0, LawKind::Exact},
          {"back.armhole", 0.0, LawKind::Exact},
          {"neckline", 0.0, LawKind::Exact}};
}

// 40: a strip across upper chest and upper back, with the shoulder darts closed, just over the
// across points; the darts keep their mouths.
Opened with_strip_above_bust(const Opened& open, double by) {
  Redrawing work(open);
  const Vec up{0.0, by};
  put_shoulder(work, open, moved_off_apex(closed_shoulder(work, open), Placement::shift(up)));
  work.move(Corner::CentreNeck, up);
  work.lengthen_armhole(by);
  return work.finished();
}

void lengthen_above_bust(HalfBlock& half, const RowAsk& ask) {
  half.front = with_strip_above_bust(half.front, ask.by);
  half.back = with_strip_above_bust(half.back, ask.by);
}

std::vector<Law> above_bust_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", ask.by, LawKind::Exact},
          {"back.centre_back", ask.by, LawKind::Exact},
          {"front.armhole", ask.by, LawKind::Exact},
          {"back.armhole", ask.by, LawKind::Exact},
          {"front.shoulder", 0.0, LawKind::Exact},
          {"back.shoulder", 0.0, LawKind::Exact},
          {"front.side", 0.0, LawKind::Exact},
          {"front.shoulder dart", 0.0, LawKind::Exact}};
}

// 41: centre front waist down, to nothing at the side.
void lengthen_front_waist(HalfBlock& half, const RowAsk& ask) {
  Redrawing work(half.front);
  raise_waist(work, half.front, WaistEnd::Centre, -ask.by);
  half.front = work.finished();
}

std::vector<Law> front_waist_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.centre_front", ask.by, LawKind::Exact}, {"front.side", 0.0, LawKind::Exact}};
}

// 42, 43: the side seam forward: off the front, onto the back.
Opened with_side_shifted(const Opened& open, double out) {
  Redrawing work(open);
  shift_part(work, work.corner(Corner::SideWaist), work.corner(Corner::Underarm), {out, 0.0});
  work.lengthen(kLowerArmhole, out);
  return work.finished();
}

void forward_side_seam(HalfBlock& half, const RowAsk& ask) {
  half.front = with_side_shifted(half.front, -ask.by);
  half.back = with_side_shifted(half.back, ask.by);
}

std::vector<Law> side_seam_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.armhole", -ask.by, LawKind::Ratio}, {"back.armhole", ask.by, LawKind::Ratio},
          {"bust_line", 0.0, LawKind::Exact},         {"waist", 0.0, LawKind::Exact},
          {"front.side", 0.0, LawKind::Exact},        {"back.side", 0.0, LawKind::Exact}};
}

// Takes up to `by` mm in (lets out where negative) in the waist darts of a piece, in their
// proportion, until together they take `widest`; gives what is left over.
double take_in_darts(Opened& open, double by, double widest) {
  const auto darts = waist_darts(open);
  if (darts.empty() || by == 0.0) return by;
  double mouths = 0.0;
  for (const DartSpot spot : darts) mouths += open.at(spot).intake();
  const double count = static_cast<double>(darts.size());
  const double most = std::fmax(widest, mouths) - mouths;
  const double least = std::fmin(count * kLeastMouth - mouths, 0.0);
  const double take = std::clamp(by, least, most);
  if (take == 0.0) return by;
  Redrawing work(open);
  for (const DartSpot spot : darts) {
    const double mouth = open.at(spot).intake();
    set_mouth(work, open, spot, mouth + take * mouth / mouths);
  }
  const double before = closed_length(open, BlockEdge::Waist);
  open = work.finished();
  return by - (before - closed_length(open, BlockEdge::Waist));
}

void take_in_sides(HalfBlock& half, double by) {
  half.front = with_waist_let_out_at_side(half.front, -0.5 * by);
  half.back = with_waist_let_out_at_side(half.back, -0.5 * by);
}

// 44: the waist, `by` mm on the half. What the sides cannot take goes to the darts; their mouths
// are chords and a waist is an arc, so that the sides close the last hundredths.
void take_in_waist(HalfBlock& half, const RowAsk& ask) {
  if (ask.place == "side_at_waist") {
    take_in_sides(half, ask.by);
    return;
  }
  const double sides = std::clamp(ask.by, -2.0 * kMostAtSide, 2.0 * kMostAtSide);
  const double after_back = take_in_darts(half.back, ask.by - sides, kMostInBackDarts);
  const double after_front = take_in_darts(half.front, after_back, kMostInFrontDarts);
  if (std::abs(after_front) > 1.0) {
    refuse_fit("fit.limit",
               "sides and waist darts can take " + fixed(std::abs(ask.by - after_front), 1) +
                   " mm of " + fixed(std::abs(ask.by), 1) + " mm on the half",
               "take the waist girth again and draft anew, or take the rest at the centre back");
  }
  take_in_sides(half, sides + after_front);
}

std::vector<Law> waist_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"waist", -2.0 * ask.by, LawKind::Exact},
          {"front.side", 0.0, LawKind::Exact},
          {"back.side", 0.0, LawKind::Exact}};
}

// A centre edge from the neck straight down to `from`, then curved in to `by` at the waist; `bust`
// is a point to pass by the way.
Path centre_path(Point neck, std::optional<Point> by_way_of, double straight_to, Point waist) {
  const Vec down{0.0, -1.0};
  const auto curve = [](Point a, Vec out, Point b, Vec in) {
    const double reach = kCentreHandle * distance(a, b);
    return CubicCurve{a, a + reach * unit(out), b - reach * unit(in), b};
  };
  if (by_way_of) {
    Path path({curve(neck, down, *by_way_of, waist - neck)});
    path.add(curve(*by_way_of, waist - neck, waist, down));
    return path;
  }
  const Point blade{neck.x, straight_to};
  Path path({Segment{neck, blade}});
  path.add(curve(blade, down, waist, down));
  return path;
}

Opened with_centre_taken_in(const Opened& open, double by) {
  Redrawing work(open);
  work.move(Corner::CentreWaist, {by, 0.0});
  work.lengthen({BlockEdge::Waist, 0, 0}, -by);
  for (const Corner end : {Corner::CentreWaist, Corner::CentreNeck}) {
    work.turn(work.corner(end), Angle());  // the centre is still square at both ends
  }
  const Point neck = work.at(Corner::CentreNeck), waist = work.at(Corner::CentreWaist);
  const double level = open.at(shoulder_dart(open)).apex.y;
  Opened result = work.finished();
  const bool front = open.piece.name == "front";
  const double in = waist.x - neck.x;
  const auto bust =
      front ? std::optional(Point{neck.x + kCentreFrontAtBust * in, level}) : std::nullopt;
  result.edges.back().stretches = {centre_path(neck, bust, level, waist)};
  if (front) {
    result.edges.back().role = EdgeRole::Seam;
    result.piece.cut_on = CutOn::Pair;
  }
  return result;
}

// 45: a shaped centre seam; a front leaves the fold for it.
void take_in_centre(HalfBlock& half, const RowAsk& ask) {
  if (ask.by == 0.0) return;
  Opened& open = ask.place == "centre_front" ? half.front : half.back;
  open = with_centre_taken_in(open, ask.by);
}

std::vector<Law> centre_laws(const HalfBlock&, const RowAsk& ask) {
  const bool front = ask.place == "centre_front";
  return {{"waist", -2.0 * ask.by, LawKind::Exact},
          {front ? "front.waist" : "back.waist", -ask.by, LawKind::Exact},
          {front ? "back.waist" : "front.waist", 0.0, LawKind::Exact},
          {"front.side", 0.0, LawKind::Exact}};
}

// 48: side waist point up the side seam, to nothing at the centre.
Opened with_side_waist_raised(const Opened& open, double by) {
  Redrawing work(open);
  raise_waist(work, open, WaistEnd::Side, by);
  work.put(work.corner(Corner::SideWaist),
           corner_of(open, Corner::SideWaist) + by * up_the_side(open));
  work.keep_marks_from_end(BlockEdge::Side);
  return work.finished();
}

void raise_side_waist(HalfBlock& half, const RowAsk& ask) {
  half.front = with_side_waist_raised(half.front, ask.by);
  half.back = with_side_waist_raised(half.back, ask.by);
}

std::vector<Law> side_waist_laws(const HalfBlock&, const RowAsk& ask) {
  return {{"front.side", -ask.by, LawKind::Exact},
          {"back.side", -ask.by, LawKind::Exact},
          {"front.centre_front", 0.0, LawKind::Exact},
          {"back.centre_back", 0.0, LawKind::Exact}};
}

}  // namespace

const std::vector<RowMoves> kLengthRows = {
    {39, 39, 1, lengthen_below_bust, below_bust_laws},
    {40, 40, 1, lengthen_above_bust, above_bust_laws},
    {41, 41, 1, lengthen_front_waist, front_waist_laws},
    {42, 42, 1, forward_side_seam, side_seam_laws},
    {43, 42, -1, forward_side_seam, side_seam_laws},
    {44, 44, 1, take_in_waist, waist_laws},
    {45, 45, 1, take_in_centre, centre_laws},
    {48, 48, 1, raise_side_waist, side_waist_laws},
};

}  // namespace blockwright
