#include "blockwright/base/printable.hpp"
#include "moving.hpp"

#include <cmath>

namespace blockwright {
namespace {

Angle angle_to_move(const Dart& dart, const PivotMove& move) {
  const double whole = dart.angle().radians();
  if (!move.angle && !(move.part > 0.0 && move.part <= 1.0)) {
    refuse("dart.part", move.dart,
           "the part " + told_number(move.part, 4) + " is not more than 0 and at most 1",
           "write 0.5 for half of the dart, 1 for all of it", "part");
  }
  const double asked = move.angle ? move.angle->radians() : move.part * whole;
  if (!(asked > 0.0) || asked > whole * (1.0 + 1e-12)) {
    refuse("dart.part", move.dart,
           "it has " + fixed(dart.angle().degrees(), 2) + " degrees, less than the " +
               told_number(Angle::radians(asked).degrees(), 2) + " asked for",
           "move at most the whole dart", move.angle ? "angle" : "part");
  }
  return Angle::radians(std::fmin(asked, whole));
}

// Opens a dart of no width at the aim, or takes the one that is there.
std::string receiving_dart(Opened& open, const Aim& aim, Point apex, const PivotMove& move,
                           double cup) {
  if (aim.onto) return *aim.onto;
  std::string name = free_name(open, std::string(aim.position->name));
  Dart& dart = open.at(slit(open, anchor_at(open, aim.edge, aim.along), apex, name));
  dart.pressed_to = aim.position->pressed_to;
  const Vec leg = unit(dart.legs[0] - apex);
  dart.point = apex + move.hold_back.value_or(hold_back(*aim.position, cup)) * leg;
  return name;
}

void require_hold_back(const PivotMove& move) {
  constexpr double most = 200.0;  // mm: longer than the leg of any dart of a bodice is held back
  if (!move.hold_back || (*move.hold_back >= 0.0 && *move.hold_back <= most)) return;
  refuse("dart.place", move.dart,
         "a hold-back of " + Length::mm(*move.hold_back) + " is out of range",
         "use 0 to " + Length::mm(most), "hold_back");
}

// A dart that took the place of one of its own name may have it back.
void rename_as_wished(Opened& open, std::string& name, const std::string& wish) {
  if (name == wish || find_dart(open, wish)) return;
  open.at(dart_named(open, name)).name = wish;
  name = wish;
}

constexpr double kMostHeldBack = 0.5;  // of the leg

// In the order of Towards: how much further there the second leg lies.
Leg leg_towards(const Dart& dart, PressMove::Towards towards) {
  const Vec across = dart.legs[1] - dart.legs[0];
  const double further[] = {-across.x, across.x, -across.y, across.y};
  return further[static_cast<std::size_t>(towards)] > 0.0 ? Leg::Second : Leg::First;
}

// Changes one dart and sets its peak anew.
template <class Change>
MovedDarts with_dart(const Pattern& pattern, const std::string& dart, Change&& change) {
  const PieceWords words = piece_and_name(pattern, dart);
  Opened open = opened(pattern.pieces[words.piece]);
  change(open.at(dart_named(open, words.name)));
  set_peak(open, words.name);
  return finished(pattern, words, open);
}

}  // namespace

MovedDarts pivot(const Pattern& pattern, const PivotMove& move, double cup) {
  require_hold_back(move);
  const PieceWords from = piece_and_name(pattern, move.dart);
  const PieceWords to = piece_and_name(pattern, move.to);
  if (from.piece != to.piece) {
    refuse("dart.blocked", move.dart, "a dart cannot leave its piece for " + shown(move.to),
           "name a place on the same piece");
  }
  Opened open = opened(pattern.pieces[from.piece]);
  const DartSpot spot = dart_named(open, from.name);
  const Point apex = open.at(spot).apex;
  const Aim aim = aim_of(open, spot, to.name, move.side_place);
  require_reachable(open, spot, aim);
  const Angle by = angle_to_move(open.at(spot), move);

  std::string name = receiving_dart(open, aim, apex, move, cup);
  hand_over(open, from.name, name, by);
  if (!aim.onto) rename_as_wished(open, name, std::string(aim.position->name));

  Dart& received = open.at(dart_named(open, name));
  if (aim.onto && move.hold_back) received = held_back(received, *move.hold_back);
  set_peak(open, name);
  if (find_dart(open, from.name) && from.name != name) {
    require_some_width(open, from.name);
    set_peak(open, from.name);
  }
  return finished(pattern, from, open, judged_width(open, name));
}

MovedDarts set_dart_point(const Pattern& pattern, const PointMove& move) {
  return with_dart(pattern, move.dart, [&](Dart& dart) {
    const double most = kMostHeldBack * dart.leg();
    if (!(move.hold_back >= 0.0 && move.hold_back <= most)) {
      refuse("dart.place", move.dart,
             "a hold-back of " + Length::mm(move.hold_back) + " is out of range on a leg of " +
                 Length::mm(dart.leg()),
             "use 0 to " + Length::mm(most), "hold_back");
    }
    dart = held_back(dart, move.hold_back);
  });
}

MovedDarts press(const Pattern& pattern, const PressMove& move) {
  return with_dart(pattern, move.dart,
                   [&](Dart& dart) { dart.pressed_to = leg_towards(dart, move.towards); });
}

}  // namespace blockwright
