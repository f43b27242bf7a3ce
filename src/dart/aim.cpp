#include "blockwright/geometry/intersections.hpp"
#include "moving.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Usual places. Common practice, no source.
constexpr double kMiddle = 0.5;
constexpr double kUnderUnderarm = 60.0;  // mm
constexpr double kMostUnderUnderarm = 0.5;
constexpr double kFrenchOverWaist = 40.0;  // mm
constexpr double kLeastFrench = 0.6;       // of the side, from the underarm
constexpr double kPitch = 0.35;            // of an armhole without a notch, from the underarm

constexpr double kSameApex = 1e-6;   // mm
constexpr double kSamePlace = 1e-3;  // mm: a place as near as this to a mouth is the mouth

double notch_along(const Opened& open, std::size_t edge) {
  for (std::size_t i = 0; i < open.notches.size(); ++i) {
    const Anchor& at = open.notches[i];
    if (at.edge == edge) return closed_along(open.edges[edge], at.stretch, at.along);
  }
  return kPitch * closed_length(open.edges[edge]);
}

// Where the upright or level through the apex meets the edge; the edge's middle if it does not.
double straight_from(const Opened& open, Point apex, std::size_t edge, Vec along) {
  const auto& stretches = open.edges[edge].stretches;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    if (stretches[i].empty()) continue;
    for (const LineCrossing& hit : intersections(stretches[i], apex, along)) {
      const double within = nearest(stretches[i], hit.point).along;
      return closed_along(open.edges[edge], i, within);
    }
  }
  return kMiddle * closed_length(open.edges[edge]);
}

double usual_along(const Opened& open, Point apex, const Aim& aim,
                   std::optional<double> side_place) {
  const UsualPlace usual = aim.position->usual;
  if (usual == UsualPlace::AtNotch) return notch_along(open, aim.edge);
  if (usual == UsualPlace::UnderApex) return straight_from(open, apex, aim.edge, {0.0, 1.0});
  if (usual == UsualPlace::LevelWithApex) return straight_from(open, apex, aim.edge, {1.0, 0.0});
  const double whole = closed_length(open.edges[aim.edge]);
  double place = kMiddle * whole;
  if (usual == UsualPlace::UnderUnderarm) {
    place = side_place.value_or(usual_side_place(whole));
  } else if (usual == UsualPlace::OverWaist) {
    place = std::max(whole - kFrenchOverWaist, kLeastFrench * whole);
  }
  return from_trade_end(*aim.position, whole, place);
}

// The middle of the side, as a share of it; of the side as drafted, where a fitting has made it
// longer or shorter at the underarm.
double middle_of_side(double whole, std::optional<double> side_place) {
  const double usual = usual_side_place(whole);
  return kMiddle + (side_place.value_or(usual) - usual) / whole;
}

// A second waist dart may bar the way to the usual place on the side: then the nearest place that
// the dart reaches on that half of the side, if there is one.
double usual_or_nearest(const Opened& open, Point apex, const Aim& aim,
                        std::optional<double> side_place) {
  const UsualPlace usual = aim.position->usual;
  const double along = usual_along(open, apex, aim, side_place);
  const bool low = usual == UsualPlace::OverWaist;
  if (!low && usual != UsualPlace::UnderUnderarm) return along;
  if (!barrier(open, apex, point_at(open, anchor_at(open, aim.edge, along)))) return along;
  const double whole = closed_length(open.edges[aim.edge]);
  const double wanted = from_trade_end(*aim.position, whole, along) / whole;
  const auto reached = nearest_reachable(open, apex, aim, wanted);
  if (!reached || low != (*reached > middle_of_side(whole, side_place))) return along;
  return from_trade_end(*aim.position, whole, *reached * whole);
}

bool same_apex(const Dart& a, const Dart& b) { return distance(a.apex, b.apex) <= kSameApex; }

[[noreturn]] void refuse_short_edge(double whole, const std::string& to) {
  refuse("dart.place", to,
         "an edge of " + Length::mm(whole) + " has no room for a dart, which keeps " +
             Length::mm(kFromCorner) + " from both ends",
         "name another edge");
}

double asked_along(const Opened& open, const PlaceWords& words, const Aim& aim,
                   const std::string& to) {
  const double whole = closed_length(open.edges[aim.edge]);
  if (words.fraction && !(*words.fraction >= 0.0 && *words.fraction <= 1.0)) {
    refuse("dart.place", to,
           "the fraction " + told_number(*words.fraction, 4) +
               " is off the edge, which runs from 0 to 1",
           "write a fraction between, or a distance such as \":60mm\"");
  }
  const double from_end = words.distance.value_or(words.fraction.value_or(0.0) * whole);
  if (!is_off_corners(open.edges[aim.edge], from_end)) {
    const double first = std::ceil(100.0 * kFromCorner / whole) / 100.0;
    if (first > 0.5) refuse_short_edge(whole, to);
    const double nearest_fraction = std::clamp(from_end / whole, first, 1.0 - first);
    refuse("dart.place", to,
           "a dart " + Length::mm(from_end) + " along an edge of " + Length::mm(whole) +
               " would be in its corner or off it; it keeps " + Length::mm(kFromCorner) +
               " from the ends",
           "the nearest place is " + open.piece.name + "." + words.name + ":" +
               fixed(nearest_fraction, 2));
  }
  return from_trade_end(*aim.position, whole, from_end);
}

// The dart of the same apex that the edge has, at `along` or, where no place was asked for, the
// only one.
void look_for_dart(const Opened& open, DartSpot from, bool place_asked, Aim& aim) {
  const Dart& moved = open.at(from);
  for (std::size_t d = 0; d < open.edges[aim.edge].darts.size(); ++d) {
    const DartSpot spot{aim.edge, d};
    const Dart& there = open.at(spot);
    if (spot == from) continue;
    const double along = mouth_along(open.edges[aim.edge], d);
    const bool at_place = std::abs(along - aim.along) <= kSamePlace;
    if (at_place && !same_apex(moved, there)) {
      refuse("dart.blocked", open.piece.name + "." + moved.name,
             "the dart " + open.piece.name + "." + there.name +
                 " opens there already, about another apex",
             "choose a place to one side of it");
    }
    if (!same_apex(moved, there) || (place_asked && !at_place)) continue;
    aim.onto = there.name;
    aim.along = along;
  }
}

void refuse_own_place(const Opened& open, DartSpot from, const Aim& aim) {
  if (aim.edge != from.edge || aim.onto) return;
  if (std::abs(mouth_along(open.edges[from.edge], from.dart) - aim.along) > kSamePlace) return;
  refuse("dart.place", open.piece.name + "." + open.at(from).name, "the dart is there already",
         "name another edge, or a fraction of this one");
}

std::optional<Aim> aim_at_dart(const Opened& open, DartSpot from, const std::string& name) {
  const auto spot = find_dart(open, name);
  if (!spot || *spot == from || !same_apex(open.at(from), open.at(*spot))) return std::nullopt;
  return Aim{&position_of(open, *spot), spot->edge, mouth_along(open.edges[spot->edge], spot->dart),
             name};
}

}  // namespace

double usual_side_place(double side) { return std::min(kUnderUnderarm, kMostUnderUnderarm * side); }

Aim aim_of(const Opened& open, DartSpot from, const std::string& to,
           std::optional<double> side_place) {
  const PlaceWords words = place_words(to);
  const bool place_asked = words.fraction || words.distance;
  if (!place_asked) {
    if (const auto aim = aim_at_dart(open, from, words.name)) return *aim;
  }
  Aim aim;
  aim.position = &position_named(open, words.name);
  aim.edge = *find_edge(open, aim.position->edge);
  aim.along = place_asked ? asked_along(open, words, aim, open.piece.name + "." + to)
                          : usual_or_nearest(open, open.at(from).apex, aim, side_place);
  look_for_dart(open, from, place_asked, aim);
  refuse_own_place(open, from, aim);
  return aim;
}

void require_reachable(const Opened& open, DartSpot from, const Aim& aim) {
  if (aim.onto) return;
  const Dart& dart = open.at(from);
  const auto bar = barrier(open, dart.apex, point_at(open, anchor_at(open, aim.edge, aim.along)));
  if (!bar) return;
  const double whole = closed_length(open.edges[aim.edge]);
  const double fraction = from_trade_end(*aim.position, whole, aim.along) / whole;
  const auto instead = nearest_reachable(open, dart.apex, aim, fraction);
  const std::string place = open.piece.name + "." + std::string(aim.position->name);
  refuse("dart.blocked", open.piece.name + "." + dart.name,
         "the way from its apex to " + place + ":" + fixed(fraction, 2) + " is blocked by " + *bar,
         instead ? "the nearest place that it reaches is " + place + ":" + fixed(*instead, 2)
                 : "it reaches no place on this edge; choose another");
}

}  // namespace blockwright
