#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/geometry/point.hpp"

namespace blockwright {

/// A length that may give way: what is asked for, and how far it gives for what it is worth (its
/// standard deviation), in mm on the half body.
struct Wish {
  double mm = 0.0;
  double gives = 1.0;
};

/// What the settlement is asked: the widths between the arms, the chest over them, an armhole that
/// the arm goes through and a bust dart that suits the cup, for given side seams. Lengths in mm on
/// the half body, from each piece's centre line.
struct Network {
  Wish across_front, across_back, upper_chest;
  Wish width;                ///< of the armhole, between the across points
  double least_width = 0.0;  ///< the arm itself
  Angle dart;                ///< the usual bust dart of this bust and cup
  double most_across_front = 0.0;
  double least_across_back = 0.0, most_across_back = 0.0;
  double most_take_in = 0.0;
  double round = 0.0;            ///< both underarm points from their centres, nothing taken in
  Point bust_point;              ///< on the front
  double over_bust_point = 0.0;  ///< the across-front line over it
  double least_over_bust = 0.0;  ///< ... and its open end at least
};

struct Settled {
  double across_front = 0.0, across_back = 0.0;  ///< half, dart closed
  double width = 0.0;                            ///< of the armhole
  double take_in = 0.0;                          ///< at the underarm, both side seams together
  Angle dart;
  /// How far the open end of the across-front line would lie too low with the dart that is the
  /// least squares' alone; negative where it lies higher than it must.
  double too_low = 0.0;

  [[nodiscard]] double chest() const { return across_front + across_back + width; }
};

/// Half across front, half across back, half upper chest, armhole width, bust dart and the take-in
/// at the underarm, which all hang together: each gives way by the least squares, in proportion to
/// what it is worth, within its bounds; the dart is no wider than leaves the open end of the
/// across-front line where it must stay. Continuous in all of its inputs. `near` is a guess of the
/// dart: it changes the cost and nothing else.
Settled settled(const Network& network, Angle near);

}  // namespace blockwright
