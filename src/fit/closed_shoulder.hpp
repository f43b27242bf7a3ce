#pragma once

#include "blockwright/fit/redrawing.hpp"

namespace blockwright {

/// The shoulder of a half piece with its shoulder dart closed: a straight line from the side neck
/// point to the shoulder point, which the dart's inner leg meets.
struct ClosedShoulder {
  Point side_neck;
  Point leg;  ///< where both legs end
  Point shoulder_point;
  Point apex;
  Angle angle;  ///< of the dart

  [[nodiscard]] double length() const { return distance(side_neck, shoulder_point); }
  [[nodiscard]] double mouth() const;
};

DartSpot shoulder_dart(const Opened& open);

/// Takes the shoulder as `work` has it by now.
ClosedShoulder closed_shoulder(const Redrawing& work, const Opened& open);
/// Puts its points back with the dart open.
void put_shoulder(Redrawing& work, const Opened& open, const ClosedShoulder& shoulder);

/// The shoulder between other ends: the dart keeps its lines and its angle, and they end at the new
/// shoulder line.
ClosedShoulder with_ends(const ClosedShoulder& shoulder, Point side_neck, Point shoulder_point);
/// Turned about its side neck point, or about its shoulder point, until the other end stands `rise`
/// mm higher; its length is kept. Throws InputError "fit.amount" where it is too short for that.
ClosedShoulder tip_raised(const ClosedShoulder& shoulder, double rise);
ClosedShoulder neck_end_raised(const ClosedShoulder& shoulder, double rise);
/// All placed as one but the apex; the mouth keeps its width, so that the angle follows the leg.
ClosedShoulder moved_off_apex(const ClosedShoulder& shoulder, const Placement& by);

}  // namespace blockwright
