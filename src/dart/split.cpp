#include "moving.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>

namespace blockwright {
namespace {

constexpr Limits kSpacing = {10.0, 80.0};  // mm
constexpr std::size_t kMostDarts = 6;
constexpr double kWhole = 1e-9;
constexpr double kSplitTouch = 1e-6;  // mm

void require_sound(const SplitMove& move) {
  const double sum = std::accumulate(move.shares.begin(), move.shares.end(), 0.0);
  const bool positive = std::ranges::all_of(move.shares, [](double share) { return share > 0.0; });
  const bool count = move.shares.size() >= 2 && move.shares.size() <= kMostDarts;
  if (!positive || !count || std::abs(sum - 1.0) > kWhole) {
    const std::string have =
        move.shares.size() == 1
            ? "this is 1, and adds up to "
            : "these are " + std::to_string(move.shares.size()) + ", and add up to ";
    refuse("dart.part", move.dart,
           "the shares of a split dart must be 2 to 6, each more than 0, "
           "and add up to 1; " +
               have + told_number(sum, 6),
           "write for example 0.5 and 0.5", "shares");
  }
  require_within(kSpacing, {"spacing", "a spacing", move.spacing}, move.dart);
}

// Named "shoulder_1", "shoulder_2" ... in the trade's order; where the piece has a dart of such a
// name already, after a group of their own. In the order of the edge.
std::vector<DartShare> shares_of(const Opened& open, DartSpot spot, const SplitMove& move) {
  const Dart& dart = open.at(spot);
  std::vector<DartShare> shares;
  std::string stem = dart.name;
  while (shares.size() < move.shares.size()) {
    const std::string name = stem + "_" + std::to_string(shares.size() + 1);
    if (find_dart(open, name)) {
      stem += "_group";
      shares.clear();
    } else {
      shares.push_back({name, move.shares[shares.size()] * dart.angle()});
    }
  }
  if (position_of(open, spot).from_path_end) std::ranges::reverse(shares);
  return shares;
}

[[noreturn]] void refuse_room(const SplitMove& move, double room) {
  refuse("dart.place", move.dart,
         "there is no room for " + std::to_string(move.shares.size()) + " darts " +
             Length::mm(move.spacing) + " apart on this edge",
         room > kSpacing.least ? "set them " + Length::mm(std::floor(room)) + " apart"
                               : "split it into fewer, or move it to a longer edge first",
         "spacing");
}

// Where the darts of a fan open, in mm of the closed edge, in its order.
std::vector<double> fan_places(const Opened& open, DartSpot spot, const SplitMove& move) {
  const OpenEdge& edge = open.edges[spot.edge];
  const double middle = mouth_along(edge, spot.dart), whole = closed_length(edge);
  const double half = 0.5 * (static_cast<double>(move.shares.size()) - 1.0);
  const double room = (std::fmin(middle, whole - middle) - kFromCorner) / half;
  if (move.spacing > room) refuse_room(move, room);
  std::vector<double> places;
  for (std::size_t i = 0; i < move.shares.size(); ++i) {
    places.push_back(middle + (static_cast<double>(i) - half) * move.spacing);
  }
  return places;
}

void fan_out(Opened& open, const std::string& name, const std::vector<DartShare>& shares,
             const std::vector<double>& places) {
  const DartSpot spot = dart_named(open, name);
  const Dart dart = open.at(spot);
  const DartPosition& position = position_of(open, spot);
  const double middle = mouth_along(open.edges[spot.edge], spot.dart);
  std::size_t stays = places.size();
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (std::abs(places[i] - middle) < kSplitTouch) {
      stays = i;
      continue;
    }
    require_reachable(open, dart_named(open, name), {&position, spot.edge, places[i], {}});
    const Anchor place = anchor_at(open, spot.edge, places[i]);
    Dart& opening = open.at(slit(open, place, dart.apex, shares[i].name));
    opening.pressed_to = dart.pressed_to;
    opening.point = dart.apex + distance(dart.apex, dart.point) * unit(opening.legs[0] - dart.apex);
    const bool last = stays == places.size() && i + 1 == places.size();
    hand_over(open, name, shares[i].name,
              last ? open.at(dart_named(open, name)).angle() : shares[i].angle);
  }
  if (stays < places.size()) open.at(dart_named(open, name)).name = shares[stays].name;
}

}  // namespace

MovedDarts split(const Pattern& pattern, const SplitMove& move) {
  require_sound(move);
  const PieceWords words = piece_and_name(pattern, move.dart);
  Opened open = opened(pattern.pieces[words.piece]);
  const DartSpot spot = dart_named(open, words.name);
  std::vector<DartShare> shares = shares_of(open, spot, move);
  if (move.group == DartGroup::Fanned) {
    fan_out(open, words.name, shares, fan_places(open, spot, move));
  } else if (!part_parallel(open, spot, shares, move.spacing)) {
    refuse_room(move, 0.5 * move.spacing);
  }
  std::ranges::sort(shares, {}, &DartShare::name);
  Problems remarks;
  for (const DartShare& share : shares) {
    set_peak(open, share.name);
    std::ranges::move(judged_width(open, share.name), std::back_inserter(remarks));
  }
  return finished(pattern, words, open, std::move(remarks));
}

MovedDarts merge(const Pattern& pattern, const MergeMove& move, double cup) {
  const PieceWords words = piece_and_name(pattern, move.dart);
  const PieceWords into = piece_and_name(pattern, move.into);
  Opened open = opened(pattern.pieces[words.piece]);
  const DartSpot a = dart_named(open, words.name);
  if (into.piece != words.piece || into.name == words.name) {
    refuse("dart.apart", move.dart, "two different darts of one piece can be merged",
           "name another dart of the piece " + open.piece.name);
  }
  const DartSpot b = dart_named(open, into.name);
  if (distance(open.at(a).apex, open.at(b).apex) <= kSplitTouch) {
    return pivot(pattern, {move.dart, move.into, 1.0, std::nullopt, std::nullopt}, cup);
  }
  const bool neighbours = a.edge == b.edge && (a.dart + 1 == b.dart || b.dart + 1 == a.dart);
  if (!neighbours) {
    refuse("dart.apart", move.dart,
           "it has another apex than " + move.into + " and is not its neighbour on one edge",
           "only darts of one apex, or neighbours on one edge, become one");
  }
  join_neighbours(open, std::min(a, b), a < b);
  set_peak(open, into.name);
  return finished(pattern, words, open, judged_width(open, into.name));
}

}  // namespace blockwright
