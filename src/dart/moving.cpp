#include "moving.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/dart/pivot.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "grain.hpp"
#include "turning.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

// An angle of no more than this is nothing: at the largest leg its mouth is below 1e-8 mm.
constexpr Angle kNothing = Angle::radians(1e-11);
// Narrower than this at the mouth, in mm, a dart is better eased in. Common practice, no source.
constexpr double kNarrowest = 6.0;
// On a leg shorter than this a wide angle makes a blunt cone. Common practice, no source.
constexpr double kShortLeg = 150.0;
constexpr Angle kWideOnShortLeg = Angle::degrees(16.0);
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

// A fold can only lie on a straight line. The grain stays parallel to the centre waist's part,
// which never turns.
void settle_centre_front(Piece& piece, const Opened& open, Problems& remarks) {
  const auto e = find_edge(open, "centre_front");
  if (!e) return;
  const bool straight = is_straight_fold(open.edges[*e]);
  if (straight == (piece.cut_on == CutOn::Fold)) return;
  piece.cut_on = straight ? CutOn::Fold : CutOn::Pair;
  piece.edges[*e].role = straight ? EdgeRole::Fold : EdgeRole::Seam;
  const std::string where = piece.name + ".centre_front";
  remarks.push_back(
      straight ? Problem{Severity::Note, "dart.fold", where,
                         "the centre front is straight again: cut 1 on the fold", ""}
               : Problem{Severity::Note, "dart.fold", where,
                         "the centre front is no longer straight: it becomes a seam, cut 2, a pair",
                         "the grain keeps to the lower part of the centre front"});
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

void refuse_crossings(const Piece& piece, const std::string& where) {
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!darts_cross(piece.darts[i], piece.darts[j])) continue;
      refuse("dart.blocked", where,
             "the darts " + piece.darts[i].name + " and " + piece.darts[j].name + " would cross",
             "move a part of the dart, or choose another place");
    }
  }
  if (const auto problem = find_problem(piece)) {
    refuse("dart.blocked", where, "the piece would not hold together: " + problem->message,
           "move a part of the dart, or choose another place");
  }
}

Vec into_mouth(const OpenEdge& edge, std::size_t d) {
  const bool first = edge.darts[d].pressed_to == Leg::First;
  const Path& stretch = edge.stretches[first ? d : d + 1];
  if (stretch.empty()) return {};
  return first ? end_tangent(stretch) : -start_tangent(stretch);
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

void cap_dart(Opened& open, const std::string& name) {
  const DartSpot spot = dart_named(open, name);
  const Vec seam = into_mouth(open.edges[spot.edge], spot.dart);
  Dart& dart = open.at(spot);
  dart.cap = norm(seam) == 0.0 || dart.legs[0] == dart.legs[1]
                 ? midpoint(dart.legs[0], dart.legs[1])
                 : dart_cap(dart.point, dart.inner_leg(), dart.outer_leg(), seam);
}

std::string free_name(const Opened& open, const std::string& wish) {
  std::string name = wish;
  for (int number = 2; find_dart(open, name); ++number) name = wish + "_" + std::to_string(number);
  return name;
}

Piece finished(const Opened& open, const std::string& where, Problems& remarks) {
  Piece piece = put_together(open);
  settle_centre_front(piece, open, remarks);
  piece = with_clear_grain(std::move(piece));
  refuse_crossings(piece, where);
  return piece;
}

void judge_width(const Opened& open, const std::string& name, Angle had, Problems& remarks) {
  const DartSpot spot = dart_named(open, name);
  const Dart& dart = open.at(spot);
  const double angle = dart.angle().degrees();
  if (angle > kWidestDart.degrees() && dart.angle().radians() > had.radians() + 1e-9) {
    const double room = kWidestDart.degrees() - had.degrees();
    refuse("dart.wide", of(open, name),
           "the dart would take " + fixed(angle, 1) + " degrees; one dart carries at most " +
               fixed(kWidestDart.degrees(), 0),
           room > 0.5 ? "move at most " + fixed(room, 1) +
                            " degrees here (\"angle\", or a smaller part), or split the dart"
                      : "split the dart, or make a princess seam");
  }
  const double widest = position_of(open, spot).widest_mouth;
  const bool blunt = dart.leg() < kShortLeg && angle > kWideOnShortLeg.degrees();
  if (dart.intake() > widest || blunt) {
    remarks.push_back({Severity::Warning, "dart.wide", of(open, name),
                       "it is " + trimmed(dart.intake(), 1) + " mm wide on a leg of " +
                           trimmed(dart.leg(), 0) + " mm (" + fixed(angle, 1) +
                           " degrees); about " + trimmed(widest, 0) + " mm is usual here",
                       "split it in two, move a part elsewhere, or make a seam of it"});
  }
  if (dart.intake() < kNarrowest) {
    remarks.push_back({Severity::Note, "dart.narrow", of(open, name),
                       "it is only " + trimmed(dart.intake(), 1) + " mm wide",
                       "turn it into ease"});
  }
}

}  // namespace blockwright
