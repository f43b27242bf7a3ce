#include "aim.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/pivot.hpp"
#include "groups.hpp"
#include "moving.hpp"
#include "reach.hpp"

#include <cmath>
#include <numeric>

namespace blockwright {
namespace {

constexpr double kLeastSpacing = 10.0, kMostSpacing = 80.0;  // mm
constexpr std::size_t kMostDarts = 6;
constexpr double kWhole = 1e-9;
constexpr double kSplitTouch = 1e-6;  // mm

void require_sound(const SplitMove& move) {
  const double sum = std::accumulate(move.shares.begin(), move.shares.end(), 0.0);
  bool positive = true;
  for (const double share : move.shares) positive = positive && share > 0.0;
  const bool count = move.shares.size() >= 2 && move.shares.size() <= kMostDarts;
  if (!positive || !count || std::abs(sum - 1.0) > kWhole) {
    refuse("dart.part", move.dart,
           "the shares of a split dart must be 2 to 6, each more than 0, "
           "and add up to 1; these add up to " +
               told_number(sum, 6),
           "write for example 0.5 and 0.5");
  }
  if (!(move.spacing >= kLeastSpacing && move.spacing <= kMostSpacing)) {
    refuse("dart.place", move.dart, "a spacing of " + Length::mm(move.spacing) + " is out of range",
           "use " + Length::mm(kLeastSpacing) + " to " + Length::mm(kMostSpacing));
  }
}

std::vector<Angle> angles_of(const Dart& dart, const SplitMove& move, bool reversed) {
  std::vector<Angle> angles;
  for (const double share : move.shares) angles.push_back(share * dart.angle());
  return reversed ? std::vector<Angle>(angles.rbegin(), angles.rend()) : angles;
}

[[noreturn]] void refuse_room(const SplitMove& move, double room) {
  refuse("dart.place", move.dart,
         "there is no room for " + std::to_string(move.shares.size()) + " darts " +
             Length::mm(move.spacing) + " apart on this edge",
         room > kLeastSpacing ? "set them " + Length::mm(std::floor(room)) + " apart"
                              : "split it into fewer, or move it to a longer edge first");
}

// Where the darts of a fan open, in mm of the closed edge, in its order.
std::vector<double> fan_places(const Opened& open, DartSpot spot, const SplitMove& move) {
  const OpenEdge& edge = open.edges[spot.edge];
  const double middle = closed_along(edge, spot.dart + 1, 0.0), whole = closed_length(edge);
  const double half = 0.5 * (static_cast<double>(move.shares.size()) - 1.0);
  const double room = (std::fmin(middle, whole - middle) - kFromCorner) / half;
  if (move.spacing > room) refuse_room(move, room);
  std::vector<double> places;
  for (std::size_t i = 0; i < move.shares.size(); ++i) {
    places.push_back(middle + (static_cast<double>(i) - half) * move.spacing);
  }
  return places;
}

void fan_out(Opened& open, const std::string& name, const std::vector<Angle>& angles,
             const std::vector<double>& places, bool from_end) {
  const DartSpot spot = dart_named(open, name);
  const Dart dart = open.at(spot);
  const DartPosition& position = position_of(open, spot);
  const double middle = closed_along(open.edges[spot.edge], spot.dart + 1, 0.0);
  std::size_t stays = places.size();
  const auto number = [&](std::size_t i) { return from_end ? places.size() - i : i + 1; };
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (std::abs(places[i] - middle) < kSplitTouch) {
      stays = i;
      continue;
    }
    Aim aim{&position, spot.edge, places[i], std::nullopt};
    require_reachable(open, dart_named(open, name), aim);
    const std::string part = name + "_" + std::to_string(number(i));
    Dart& opening = open.at(slit(open, spot_at(open, aim.edge, aim.along), dart.apex, part));
    opening.pressed_to = dart.pressed_to;
    opening.point = dart.apex + distance(dart.apex, dart.point) * unit(opening.legs[0] - dart.apex);
    const bool last = stays == places.size() && i + 1 == places.size();
    hand_over(open, name, part, last ? open.at(dart_named(open, name)).angle() : angles[i]);
  }
  if (stays < places.size()) {
    open.at(dart_named(open, name)).name = name + "_" + std::to_string(number(stays));
  }
}

// Parts are named after their dart; where the piece has a dart of such a name already, after a
// group of its own.
std::string free_stem(const Opened& open, const std::string& name, std::size_t count) {
  const auto taken = [&](const std::string& stem) {
    for (std::size_t i = 1; i <= count; ++i) {
      if (find_dart(open, stem + "_" + std::to_string(i))) return true;
    }
    return false;
  };
  std::string stem = name;
  while (taken(stem)) stem += "_group";
  return stem;
}

void set_peaks(Opened& open, const std::string& stem, std::size_t count) {
  for (std::size_t i = 1; i <= count; ++i) set_peak(open, stem + "_" + std::to_string(i));
}

}  // namespace

MovedDarts split(const Pattern& pattern, const SplitMove& move) {
  require_sound(move);
  const PieceWords words = piece_and_name(pattern, move.dart);
  Opened open = opened(pattern.pieces[words.piece]);
  const DartSpot spot = dart_named(open, words.name);
  const std::string stem = free_stem(open, words.name, move.shares.size());
  open.at(spot).name = stem;
  const bool from_end = position_of(open, spot).from_path_end;
  const std::vector<Angle> angles = angles_of(open.at(spot), move, from_end);
  if (move.group == DartGroup::Fanned) {
    fan_out(open, stem, angles, fan_places(open, spot, move), from_end);
  } else if (!part_parallel(open, spot, angles, move.spacing, from_end)) {
    refuse_room(move, 0.5 * move.spacing);
  }
  set_peaks(open, stem, angles.size());
  MovedDarts moved{pattern, {}};
  for (std::size_t i = 1; i <= angles.size(); ++i) {
    judge_width(open, stem + "_" + std::to_string(i), kWidestDart, moved.remarks);
  }
  moved.pattern.pieces[words.piece] = finished(open, move.dart, moved.remarks);
  return moved;
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
  const Angle had = open.at(b).angle();
  join_neighbours(open, std::min(a, b), a < b);
  set_peak(open, into.name);
  MovedDarts moved{pattern, {}};
  judge_width(open, into.name, had, moved.remarks);
  moved.pattern.pieces[words.piece] = finished(open, move.dart, moved.remarks);
  return moved;
}

}  // namespace blockwright
