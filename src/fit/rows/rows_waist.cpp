#include "blockwright/block/waist_edge.hpp"
#include "rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <string_view>

namespace blockwright {
namespace {

// What a waist can be taken in by: at each side edge, in a back waist dart, in the front ones
// together, at the centre back; in mm. Common practice, no source.
constexpr double kMostAtSide = 8.0;
constexpr double kMostInBackDart = 40.0;
constexpr double kMostInFrontDarts = 45.0;
constexpr double kMostAtCentreBack = 15.0;
// ... and in each of several back waist darts: as they are drafted. Ours.
constexpr double kMostInEachBackDart = 35.0;
// More than the side edges can take is shared: sides, back darts, front darts. Common practice, no
// source.
constexpr double kShareOfSides = 2.0 * kSideShare;
constexpr double kShareOfFront = kFrontDartShare;
constexpr double kShareOfBack = 1.0 - kShareOfSides - kShareOfFront;
// Less than this is not worth a seam of its own, and the side edges take it, in mm. Ours.
constexpr double kLeftToSides = 1.0;
// A bust line that has changed by less has stayed, in mm.
constexpr double kBustLineKept = 1e-9;
// What rounding leaves of an amount that darts have taken, in mm.
constexpr double kTaken = 1e-3;
// A centre front seam comes in by this share at the bust line of what it does at the waist. Common
// practice, no source (3 to 10 mm against 5 to 10).
constexpr double kCentreFrontAtBust = 0.65;
constexpr double kCentreHandle = 0.35;

// Waist darts of a piece that are taken in as one, and what they may be together at most.
struct DartsTaken {
  std::vector<DartSpot> spots;
  double widest;
};

double mouths_of(const Opened& open, const std::vector<DartSpot>& spots) {
  double sum = 0.0;
  for (const DartSpot spot : spots) sum += open.at(spot).intake();
  return sum;
}

// What the back waist darts take together at most: darts are widened in their proportion, and none
// of several beyond its own limit.
double most_in_back_darts(const Opened& back) {
  double widest = 0.0;
  for (const DartSpot spot : waist_darts(back)) widest = std::fmax(widest, back.at(spot).intake());
  if (waist_darts(back).size() < 2) return kMostInBackDart;
  return std::fmax(kMostInBackDart,
                   mouths_of(back, waist_darts(back)) * kMostInEachBackDart / widest);
}

// The piece with darts wider by `more` mm together, in their proportion. What a back dart, whose
// point lies above the bust line, takes out of that is given back at the side: so it is drafted.
Opened with_wider_darts(const Opened& open, const std::vector<DartSpot>& spots, double more) {
  const double mouths = mouths_of(open, spots);
  Redrawing work(open);
  for (const DartSpot spot : spots) {
    const double mouth = open.at(spot).intake();
    set_mouth(work, spot, mouth + more * mouth / mouths);
  }
  const Opened wider = work.finished();
  const double lost = bust_line_width(open) - bust_line_width(wider);
  return std::abs(lost) < kBustLineKept ? wider : with_bust_let_out_at_side(wider, lost);
}

// How much shorter the sewn waist is.
double taken_in(const Opened& before, const Opened& after) {
  return closed_length(before, BlockEdge::Waist) - closed_length(after, BlockEdge::Waist);
}

// Takes up to `by` mm in (lets out where negative) in waist darts of a piece; gives what is left
// over. Mouths are chords of a curving waist, so that they widen by a little more or less than the
// waist is taken in.
double take_in_darts(double by, Opened& open, const DartsTaken& darts) {
  constexpr int passes = 8;
  const auto& [spots, widest] = darts;
  const double count = static_cast<double>(spots.size()), mouths = mouths_of(open, spots);
  if (count == 0.0 || by == 0.0) return by;
  const double most = std::fmax(widest, mouths) - mouths;
  const double least = std::fmin(count * kLeastMouth - mouths, 0.0);
  double more = std::clamp(by, least, most);
  for (int pass = 0; pass < passes; ++pass) {
    const double got = taken_in(open, with_wider_darts(open, spots, more));
    more = std::clamp(more + by - got, least, most);
  }
  if (more == 0.0) return by;
  const Opened before = open;
  open = with_wider_darts(open, spots, more);
  return by - taken_in(before, open);
}

DartsTaken front_darts(const Opened& front) { return {waist_darts(front), kMostInFrontDarts}; }
DartsTaken back_darts(const Opened& back) { return {waist_darts(back), most_in_back_darts(back)}; }

void take_in_sides(HalfBlock& half, double by) {
  half.front = with_waist_let_out_at_side(half.front, -0.5 * by);
  half.back = with_waist_let_out_at_side(half.back, -0.5 * by);
}

// A centre edge from the neck down to the waist, which lies further in: straight as far as the
// level `straight_to`, then curved; or one curve by way of a point.
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
  const double level = apex_of(open).y;
  Opened result = work.finished();
  const bool front = is_a(open.piece, kBodiceFront);
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

// What is said of places that cannot take all that is asked of them.
struct WaistPlaces {
  std::string_view name, hint;
};
constexpr WaistPlaces kAllPlaces{"sides, waist darts and centre back",
                                 "take the waist girth again and draft anew"};
constexpr WaistPlaces kSidesAndDarts{"sides and waist darts", kAllPlaces.hint};
constexpr WaistPlaces kDartsAlone{
    "waist darts",
    "give the rest to the side seams (side_at_waist), or to all (waist); or take the waist girth "
    "again and draft anew"};

[[noreturn]] void refuse_waist(const WaistPlaces& places, double by) {
  refuse_fit("fit.limit",
             Length::mm(std::abs(by)) + " is asked for on each half; " + std::string(places.name) +
                 " have not so much room",
             std::string(places.hint), {MeasurementName::WaistGirth});
}

// One place at which a waist can be taken in or let out: takes what it can of the mm asked of it
// and gives what is left over.
struct WaistPlace {
  double share;
  std::function<double(double)> take;
};

// WaistTakenIn: a waist taken in by more than the sides can take. Each place takes its share; what
// one cannot take goes to the others in their order, let out in the reverse order.
void share_waist(HalfBlock& half, double by) {
  double at_sides = 0.0;
  const auto sides = [&](double more) {
    const double all = std::clamp(at_sides + more, -2.0 * kMostAtSide, 2.0 * kMostAtSide);
    const double left = at_sides + more - all;
    at_sides = all;
    return left;
  };
  const auto back = [&](double more) {
    return take_in_darts(more, half.back, back_darts(half.back));
  };
  const auto front = [&](double more) {
    return take_in_darts(more, half.front, front_darts(half.front));
  };
  const auto centre = [&](double more) {
    if (more < kLeftToSides) return more;
    const Opened before = half.back;
    half.back = with_centre_taken_in(before, std::fmin(more, kMostAtCentreBack));
    return more - taken_in(before, half.back);
  };
  std::array<WaistPlace, 4> places{
      {{kShareOfSides, sides}, {kShareOfBack, back}, {kShareOfFront, front}, {0.0, centre}}};
  double left = 0.0;
  for (const WaistPlace& place : places) left += place.take(place.share * by);
  if (by < 0.0) std::ranges::reverse(places);
  for (const WaistPlace& place : places) left = place.take(left);
  if (std::abs(left) > kLeftToSides) refuse_waist(by > 0.0 ? kAllPlaces : kSidesAndDarts, by);
  take_in_sides(half, at_sides + left);
}

// However wide they get: where the fitter names darts, that is for her to say, and a warning tells.
constexpr double kAnyWidth = std::numeric_limits<double>::infinity();

// The waist darts alone: front and back take their shares as above; what one cannot take goes to
// the other, and what is over their usual widths to both.
void share_among_darts(HalfBlock& half, double by) {
  constexpr double of_front = kShareOfFront / (kShareOfFront + kShareOfBack);
  const auto left_of_all = [&](double more, const DartsTaken& front, const DartsTaken& back) {
    const double left = take_in_darts(of_front * more, half.front, front) +
                        take_in_darts((1.0 - of_front) * more, half.back, back);
    return take_in_darts(take_in_darts(left, half.back, back), half.front, front);
  };
  double left = left_of_all(by, front_darts(half.front), back_darts(half.back));
  if (left > kTaken) {
    left = left_of_all(left, {waist_darts(half.front), kAnyWidth},
                       {waist_darts(half.back), kAnyWidth});
  }
  if (std::abs(left) > kTaken) refuse_waist(kDartsAlone, by);
}

void take_in_one_dart(Opened& open, double by) {
  const double left = take_in_darts(by, open, {{the_waist_dart(open)}, kAnyWidth});
  const std::string dart = "the " + open.piece.name + " waist dart ";
  const char* const hint =
      "give the rest to the other darts (waist_darts), or to the side seams (side_at_waist)";
  if (left > kTaken) {
    refuse_fit("fit.limit", dart + "cannot take so much alone", hint,
               {MeasurementName::WaistGirth});
  }
  if (left < -kTaken) {
    refuse_fit("fit.negative_dart", dart + "has only " + Length::mm(left - by) + " to give", hint,
               {MeasurementName::WaistGirth});
  }
}

void take_in_waist(HalfBlock& half, const RowAsk& ask) {
  const bool narrow = std::abs(ask.by) <= 2.0 * kMostAtSide;
  if (ask.place == "front_waist_dart") return take_in_one_dart(half.front, ask.by);
  if (ask.place == "back_waist_dart") return take_in_one_dart(half.back, ask.by);
  if (ask.place == "waist_darts") return share_among_darts(half, ask.by);
  if (ask.place == "side_at_waist" || narrow) return take_in_sides(half, ask.by);
  share_waist(half, ask.by);
}

std::vector<Law> waist_laws(const HalfBlock&, const RowAsk& ask) {
  std::vector<Law> laws = {{"front.side", 0.0}, {"back.side", 0.0}};
  if (ask.place.ends_with("dart") || ask.place.ends_with("darts")) {
    laws.push_back({"bust_line", 0.0});
  }
  return laws;
}

// CentreSeamTakenIn: a shaped centre seam; a front leaves the fold for it.
void take_in_centre(HalfBlock& half, const RowAsk& ask) {
  if (ask.by == 0.0) return;
  Opened& open = ask.place == "centre_front" ? half.front : half.back;
  open = with_centre_taken_in(open, ask.by);
}

std::vector<Law> centre_laws(const HalfBlock&, const RowAsk& ask) {
  const bool front = ask.place == "centre_front";
  return {{front ? "front.waist" : "back.waist", -ask.by},
          {front ? "back.waist" : "front.waist", 0.0},
          {"front.side", 0.0}};
}

using enum CorrectionRow;

constexpr auto kWaistRows = std::to_array<RowMoves>({
    {WaistTakenIn, 1, take_in_waist, waist_laws},
    {CentreSeamTakenIn, 1, take_in_centre, centre_laws},
});
static_assert(are_all_moves_of(RowPart::Waist, kWaistRows));

}  // namespace

const std::span<const RowMoves> kWaistMoves = kWaistRows;

}  // namespace blockwright
