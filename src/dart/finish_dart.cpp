#include "blockwright/dart/pivot.hpp"
#include "moving.hpp"

namespace blockwright {
namespace {

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
  MovedDarts moved{pattern, {}};
  moved.pattern.pieces[words.piece] = finished(open, dart, moved.remarks);
  return moved;
}

}  // namespace

MovedDarts set_dart_point(const Pattern& pattern, const PointMove& move) {
  return with_dart(pattern, move.dart, [&](Dart& dart) {
    const double most = kMostHeldBack * dart.leg();
    if (!(move.hold_back >= 0.0 && move.hold_back <= most)) {
      refuse("dart.place", move.dart,
             "a hold-back of " + Length::mm(move.hold_back) + " is out of range on a leg of " +
                 Length::mm(dart.leg()),
             "use 0 to " + Length::mm(most));
    }
    dart = held_back(dart, move.hold_back);
  });
}

MovedDarts press(const Pattern& pattern, const PressMove& move) {
  return with_dart(pattern, move.dart,
                   [&](Dart& dart) { dart.pressed_to = leg_towards(dart, move.towards); });
}

}  // namespace blockwright
