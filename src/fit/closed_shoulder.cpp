#include "blockwright/base/error.hpp"
#include "parts.hpp"

#include <cmath>

namespace blockwright {
namespace {

// A shoulder steeper than this is none.
constexpr double kSteepest = 0.9;  // sine

// The run that is left when one end of the shoulder stands `rise` over the other.
double run_of(const ClosedShoulder& shoulder, double rise) {
  const double length = shoulder.length();
  if (std::abs(rise) > kSteepest * length) {
    refuse_fit("fit.amount", "the shoulder would stand on end",
               "give a smaller amount, or take the shoulder slope again",
               {MeasurementName::ShoulderSlope});
  }
  return std::sqrt((length - rise) * (length + rise));
}

}  // namespace

double ClosedShoulder::mouth() const {
  return 2.0 * distance(apex, leg) * std::sin(0.5 * angle.radians());
}

ClosedShoulder closed_shoulder(const Redrawing& work) {
  const DartSpot spot = shoulder_dart(work.open());
  const Point apex = work.apex(spot), outer = work.at(work.leg(spot, 0));
  const Point inner = work.at(work.leg(spot, 1));
  const Angle angle = turn_between(outer - apex, inner - apex);
  return {work.at(Corner::SideNeck), inner,
          rotated_about(work.at(Corner::ShoulderPoint), apex, angle), apex, angle};
}

void put_shoulder(Redrawing& work, const ClosedShoulder& shoulder) {
  const DartSpot spot = shoulder_dart(work.open());
  const auto opened_point = [&](Point p) {
    return rotated_about(p, shoulder.apex, -shoulder.angle);
  };
  work.put_apex(spot, shoulder.apex);
  work.put(work.corner(Corner::SideNeck), shoulder.side_neck);
  work.put(work.leg(spot, 1), shoulder.leg);
  work.put(work.leg(spot, 0), opened_point(shoulder.leg));
  work.put(work.corner(Corner::ShoulderPoint), opened_point(shoulder.shoulder_point));
}

ClosedShoulder with_ends(const ClosedShoulder& old, const ShoulderEnds& ends) {
  ClosedShoulder s = old;
  s.side_neck = ends.side_neck;
  s.shoulder_point = ends.shoulder_point;
  const double share = distance(old.side_neck, old.leg) / old.length();
  // A leg end that lay off the straight line stays as far off it.
  const Vec off = old.leg - between(old.side_neck, old.shoulder_point, share);
  const auto met = lines_meet(between(s.side_neck, s.shoulder_point, share) + off,
                              s.shoulder_point - s.side_neck, old.apex, old.leg - old.apex);
  require(met.has_value(), "a dart runs along the shoulder");
  s.leg = *met;
  return s;
}

ClosedShoulder tip_raised(const ClosedShoulder& s, double rise) {
  const double up = s.shoulder_point.y + rise - s.side_neck.y;
  return with_ends(s, {s.side_neck, s.side_neck + Vec{run_of(s, up), up}});
}

ClosedShoulder neck_end_raised(const ClosedShoulder& s, double rise) {
  const double up = s.side_neck.y + rise - s.shoulder_point.y;
  return with_ends(s, {s.shoulder_point + Vec{-run_of(s, up), up}, s.shoulder_point});
}

ClosedShoulder moved_off_apex(const ClosedShoulder& old, const Placement& by) {
  ClosedShoulder s = old;
  s.side_neck = by(old.side_neck);
  s.leg = by(old.leg);
  s.shoulder_point = by(old.shoulder_point);
  s.angle = wedge_angle(old.mouth(), distance(s.apex, s.leg));
  return s;
}

}  // namespace blockwright
