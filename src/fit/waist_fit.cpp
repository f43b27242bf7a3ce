#include "blockwright/geometry/solve.hpp"
#include "parts.hpp"

#include <cmath>

namespace blockwright {
namespace {

// How far a side seam is turned at most, in radians. Our bound.
constexpr double kMostTurn = 0.3;

Opened with_side_turned(const Opened& open, double radians) {
  Redrawing work(open);
  const Point underarm = work.at(Corner::Underarm);
  for (const Redrawing::Node node : work.nodes_of(BlockEdge::Side)) {
    work.put(node, rotated_about(work.at(node), underarm, Angle::radians(radians)));
  }
  hold_armhole(work);
  return work.finished();
}

// The side turned about the side waist point, so that its notch comes `by` mm out.
Opened with_side_turned_out(const Opened& open, double by) {
  const Vec up = up_the_side(open);
  const double aside = up.x + by / side_notch(open);
  if (std::abs(aside) > 0.5) {
    refuse_fit("fit.amount", "the side seam would slant too far",
               "give a smaller amount, or take the bust girth again", {MeasurementName::BustGirth});
  }
  Redrawing work(open);
  const Angle turn = turn_between(up, {aside, std::sqrt(1.0 - aside * aside)});
  const Point waist = work.at(Corner::SideWaist);
  for (const Redrawing::Node node : work.nodes_of(BlockEdge::Side)) {
    work.put(node, rotated_about(work.at(node), waist, turn));
  }
  return work.finished();
}

// A smooth share from 1 at 0 to 0 at 1, level at both ends, and its slope.
double share(double s) { return 1.0 - s * s * (3.0 - 2.0 * s); }
double share_slope(double s) { return -6.0 * s * (1.0 - s); }

// The waist's width with its mouths closed, from the centre to each of its nodes.
std::vector<double> closed_widths(const Redrawing& work,
                                  const std::vector<Redrawing::Node>& nodes) {
  std::vector<double> widths;
  double mouths = 0.0;
  for (const Redrawing::Node node : nodes) {
    for (const DartSpot spot : waist_darts(work.open())) {
      if (node == work.leg(spot, 1)) mouths += work.at(node).x - work.at(work.leg(spot, 0)).x;
    }
    widths.push_back(work.at(node).x - work.at(nodes.front()).x - mouths);
  }
  return widths;
}

// A dart's legs move along its axis, so that they stay equal.
Vec direction_of(const Redrawing& work, Redrawing::Node node) {
  for (const DartSpot spot : waist_darts(work.open())) {
    const Redrawing::Node a = work.leg(spot, 0), b = work.leg(spot, 1);
    if (node == a || node == b) return unit(work.apex(spot) - midpoint(work.at(a), work.at(b)));
  }
  return {0.0, 1.0};
}

// A waist that falls from the centre to its first dart by this angle or more keeps what it runs
// more steeply into the dart than evenly bent; a flatter one keeps less of it, a rising one this
// share, so that it has no hump. Ours: fronts are drafted so.
constexpr Angle kFullFall = Angle::degrees(3.0);
constexpr double kKeptSteepness = 0.1;

double kept_steepness(double chord) {
  return std::clamp(-chord / kFullFall.radians(), kKeptSteepness, 1.0);
}

// By how much the waist turns at its first dart when its ends have moved: as much as keeps it
// evenly bent from the centre on, or as uneven as it was. Empty where there is no such stretch.
std::optional<Angle> turn_at_first_dart(const Redrawing& work) {
  const auto dart = waist_dart(work.open());
  if (!dart) return std::nullopt;
  const Curve& was = stroke_of(work.open(), {BlockEdge::Waist, 0, 0});
  const Redrawing::Node leg = work.leg(*dart, 0), centre = work.corner(Corner::CentreWaist);
  if (end_of(was) != work.was(leg)) return std::nullopt;
  const Vec level = tangent_at(was, 0.0);
  const double before = turn_between(level, work.was(leg) - work.was(centre)).radians();
  const double now = turn_between(level, work.at(leg) - work.at(centre)).radians();
  const double steeper = turn_between(level, tangent_at(was, 1.0)).radians() - 2.0 * before;
  const double kept = kept_steepness(now) / kept_steepness(before);
  return Angle::radians(2.0 * (now - before) + (kept - 1.0) * steeper);
}

}  // namespace

DartSpot the_waist_dart(const Opened& open) {
  if (const auto spot = waist_dart(open)) return *spot;
  refuse_fit("fit.place", "this block's " + open.piece.name + " has no waist dart",
             "take the width at the side seam");
}

Opened with_waist_let_out_at_side(const Opened& open, double by) {
  const double wanted = closed_length(open, BlockEdge::Waist) + by;
  const auto too_long = [&](double turn) {
    return closed_length(with_side_turned(open, turn), BlockEdge::Waist) - wanted;
  };
  const double most = kMostTurn;
  const double turn = solve_between(too_long, {-most, most}, 1e-13);
  if (std::abs(turn) >= most) {
    refuse_fit("fit.amount", "the side seam would slant too far",
               "give a smaller amount, or take the waist and the bust girth again",
               {MeasurementName::WaistGirth, MeasurementName::BustGirth});
  }
  return with_side_turned(open, turn);
}

// The notch comes down a little as it goes out, where back waist darts take out more.
Opened with_bust_let_out_at_side(const Opened& open, double by) {
  constexpr int passes = 4;
  const double wanted = bust_line_width(open) + by;
  double out = by;
  for (int pass = 0; pass < passes; ++pass) {
    out += wanted - bust_line_width(with_side_turned_out(open, out));
  }
  return with_side_turned_out(open, out);
}

void raise_waist(Redrawing& work, WaistEnd end, double by) {
  const auto nodes = work.nodes_of(BlockEdge::Waist);
  const std::vector<double> widths = closed_widths(work, nodes);
  const double whole = widths.back();
  std::vector<Vec> directions;
  directions.reserve(nodes.size());
  for (const Redrawing::Node node : nodes) directions.push_back(direction_of(work, node));
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    const double s = end == WaistEnd::Centre ? widths[i] / whole : 1.0 - widths[i] / whole;
    work.move(nodes[i], by * share(s) * directions[i]);
    if (i == 0 || i + 1 == nodes.size()) continue;
    const double slope = by * share_slope(s) / whole * (end == WaistEnd::Centre ? 1.0 : -1.0);
    work.turn(nodes[i], Angle::radians(std::atan(slope)));
  }
  if (end != WaistEnd::Centre) return;
  // Beyond the dart it goes on as it comes in, so that it is smooth when the dart is sewn.
  if (const auto turn = turn_at_first_dart(work)) {
    for (const std::size_t leg : {std::size_t{0}, std::size_t{1}}) {
      work.turn(work.leg(*waist_dart(work.open()), leg), *turn);
    }
  }
}

Opened with_centre_waist_raised(const Opened& open, double by) {
  Redrawing work(open);
  raise_waist(work, WaistEnd::Centre, by);
  return work.finished();
}

}  // namespace blockwright
