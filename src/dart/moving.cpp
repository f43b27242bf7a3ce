#include "moving.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "grain.hpp"
#include "turning.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

// An angle of no more than this is nothing: at the largest leg its mouth is below 1e-8 mm.
constexpr Angle kNothing = Angle::radians(1e-11);
// A dart of less is too little to reckon with: 0.05 mm on a leg of 30 cm. Ours.
constexpr Angle kLeastDart = Angle::degrees(0.01);
// Narrower than this at the mouth, in mm, a dart is better eased in. Common practice, no source.
constexpr double kNarrowest = 6.0;
// On a leg shorter than this a wide angle makes a blunt cone. Common practice, no source.
constexpr double kShortLeg = 150.0;
constexpr Angle kWideOnShortLeg = Angle::degrees(16.0);
// Nearer than this on their edge, darts of two apexes are in each other's way; apexes as near as
// this are those of one group. In mm; ours.
constexpr double kNeighbours = 40.0;
constexpr double kOneGroup = 60.0;
constexpr double kOnCentre = 1e-6;  // mm
constexpr double kTouch = 1e-6;     // mm

std::string of(const Opened& open, const std::string& dart) { return open.piece.name + "." + dart; }

bool is_straight_fold(const OpenEdge& edge) {
  if (!edge.darts.empty()) return false;
  for (const Curve& curve : edge.stretches.front().curves()) {
    if (!std::holds_alternative<Segment>(curve)) return false;
    if (std::abs(start_of(curve).x) > kOnCentre || std::abs(end_of(curve).x) > kOnCentre) {
      return false;
    }
  }
  return true;
}

// The edge that the kind is drafted on the fold with.
std::optional<std::size_t> fold_edge(const Opened& open) {
  for (std::size_t e = 0; e < open.edges.size(); ++e) {
    const KindEdge* edge = kind_edge(open.piece, open.edges[e].name);
    if (edge != nullptr && edge->role == EdgeRole::Fold) return e;
  }
  return std::nullopt;
}

// A fold can only lie on a straight line. The grain stays parallel to the centre waist's part,
// which never turns.
void settle_fold(Piece& piece, const Opened& open, Problems& remarks) {
  const auto e = fold_edge(open);
  if (!e) return;
  const bool straight = is_straight_fold(open.edges[*e]);
  if (piece.cut_on == CutOn::One || straight == (piece.cut_on == CutOn::Fold)) return;
  piece.cut_on = straight ? CutOn::Fold : CutOn::Pair;
  piece.edges[*e].role = straight ? EdgeRole::Fold : EdgeRole::Seam;
  const std::string where = piece.name + "." + piece.edges[*e].name;
  remarks.push_back(straight ? Problem{Severity::Note, "dart.fold", where,
                                       "it is straight again: cut 1 on the fold", ""}
                             : Problem{Severity::Note, "dart.fold", where,
                                       "it is no longer straight and becomes a seam: cut 2, a pair",
                                       "the grain keeps to its lower part"});
}

bool darts_cross(const Dart& a, const Dart& b) {
  if (distance(a.apex, b.apex) <= kTouch) return false;
  const Path in_a = Path::through({a.legs[0], a.apex, a.legs[1]});
  const Path in_b = Path::through({b.legs[0], b.apex, b.legs[1]});
  for (const PathCrossing& hit : intersections(in_a, in_b)) {
    if (distance(hit.point, a.legs[0]) > kTouch && distance(hit.point, a.legs[1]) > kTouch) {
      return true;
    }
  }
  return false;
}

// Gathers are drawn up as one; a dart in the midst of them could not be sewn.
void refuse_darts_in_gathers(const Piece& piece, const std::string& where) {
  for (const Fullness& fullness : piece.fullness) {
    for (const Dart& dart : piece.darts) {
      if (dart.edge != fullness.edge) continue;
      const double at = nearest(piece.edge(dart.edge).path, dart.peak).along;
      if (at <= fullness.from || at >= fullness.to) continue;
      refuse("dart.blocked", where,
             "the dart " + dart.name + " would open in the gathers " + fullness.name,
             "choose a place to one side of them, or make the gathers last");
    }
  }
}

void refuse_crossings(const Piece& piece, const std::string& where) {
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!darts_cross(piece.darts[i], piece.darts[j])) continue;
      refuse("dart.blocked", where,
             "the darts " + piece.darts[i].name + " and " + piece.darts[j].name + " would cross",
             "move a part of the dart, or choose another place");
    }
  }
  if (const auto cut = find_cut_dart(piece)) {
    refuse("dart.blocked", where, "the " + cut->edge + " would cut through the dart " + cut->dart,
           "move a part of the dart, set its parts closer, or choose another place");
  }
  if (const auto problem = find_problem_on_paper(piece)) {
    refuse("dart.blocked", where, "the piece would not hold together: " + problem->message,
           "move a part of the dart, or choose another place");
  }
}

// Darts of two apexes side by side look like one that is sewn wrongly.
void warn_of_neighbours(const Opened& open, DartSpot spot, Problems& remarks) {
  const OpenEdge& edge = open.edges[spot.edge];
  const auto place = [&](std::size_t d) { return closed_along(edge, d + 1, 0.0); };
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const double off = std::abs(place(d) - place(spot.dart));
    const bool one_group = distance(edge.darts[d].apex, open.at(spot).apex) < kOneGroup;
    if (d == spot.dart || off > kNeighbours || one_group) continue;
    remarks.push_back({Severity::Warning, "dart.beside", of(open, open.at(spot).name),
                       "it opens only " + Length::mm(off) + " from the dart " +
                           of(open, edge.darts[d].name) + ", which has another apex",
                       "set it further off, or choose another edge"});
  }
}

}  // namespace

void hand_over(Opened& open, const std::string& from, const std::string& to, Angle by) {
  const DartSpot closing = dart_named(open, from), opening = dart_named(open, to);
  if (closing < opening) {
    turn_between(open, closing, opening, -by);
  } else {
    turn_between(open, opening, closing, by);
  }
  if (std::abs(open.at(closing).angle().radians()) <= kNothing.radians()) join(open, closing);
}

void require_some_width(const Opened& open, const std::string& name) {
  const double angle = std::abs(open.at(dart_named(open, name)).angle().degrees());
  if (angle >= kLeastDart.degrees()) return;
  refuse("dart.part", of(open, name),
         "it would have " + told_number(angle, 6) + " degrees, too narrow to sew",
         "give it a larger part, or move the whole dart");
}

std::string free_name(const Opened& open, const std::string& wish) {
  return first_free(wish,
                    [&](const std::string& name) { return find_dart(open, name).has_value(); });
}

Piece finished(const Opened& open, const std::string& where, Problems& remarks) {
  Piece piece = put_together(open);
  settle_fold(piece, open, remarks);
  refuse_darts_in_gathers(piece, where);
  refuse_crossings(piece, where);
  return with_clear_grain(std::move(piece));
}

void judge_width(const Opened& open, const std::string& name, Angle had, Problems& remarks) {
  const DartSpot spot = dart_named(open, name);
  const Dart& dart = open.at(spot);
  const double angle = dart.angle().degrees();
  require_some_width(open, name);
  if (angle > kWidestDart.degrees() && dart.angle().radians() > had.radians() + 1e-9) {
    const double room = kWidestDart.degrees() - had.degrees();
    refuse("dart.wide", of(open, name),
           "the dart would take " + fixed(angle, 1) + " degrees; one dart takes at most " +
               fixed(kWidestDart.degrees(), 0),
           room > 0.5 ? "move at most " + fixed(room, 1) +
                            " degrees here, that is a smaller part, or move the rest elsewhere"
                      : "choose another place, or make a princess seam of both");
  }
  const double widest = position_of(open, spot).widest_mouth;
  const bool blunt = dart.leg() < kShortLeg && angle > kWideOnShortLeg.degrees();
  if (dart.intake() > widest || blunt) {
    const Wording limit = dart.intake() > widest
                              ? "about " + Length::mm(widest) + " is usual here"
                              : "over " + fixed(kWideOnShortLeg.degrees(), 0) +
                                    " degrees so short a dart makes a blunt point";
    remarks.push_back({Severity::Warning, "dart.wide", of(open, name),
                       "it is " + Length::mm(dart.intake()) + " wide on a leg of " +
                           Length::mm(dart.leg()) + ", " + fixed(angle, 1) + " degrees; " + limit,
                       "split it in two, move a part elsewhere, or make a seam of it"});
  }
  warn_of_neighbours(open, spot, remarks);
  if (dart.intake() < kNarrowest) {
    remarks.push_back({Severity::Note, "dart.narrow", of(open, name),
                       "it is only " + Length::mm(dart.intake()) + " wide", "turn it into ease"});
  }
}

}  // namespace blockwright
