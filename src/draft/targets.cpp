#include "targets.hpp"

#include "rules.hpp"

#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

/// A smaller change of a measurement, in mm, is rounding.
constexpr double kWorthTelling = 1e-3;

double with_ease(const Body& body, const Ease& ease, MeasurementName name) {
  return body[name] + ease[name];
}

double under_bust_length(const Body& body, const Ease& ease, Settlement& settlement) {
  const double length =
      with_ease(body, ease, SideNeckToWaist) - with_ease(body, ease, SideNeckToBustPoint);
  const double least = rules::kLeastUnderBust;
  if (length >= least) return length;
  settlement.adjust(SideNeckToWaist, least - length,
                    "the bust point must lie at least " + Length::mm(least) + " above the waist");
  return least;
}

}  // namespace

void Settlement::adjust(MeasurementName name, double by, const Wording& why) {
  if (std::abs(by) > kWorthTelling) adjustments_.push_back({name, by, why});
}

Targets targets_for(const Body& body, const Ease& ease, Settlement& settlement) {
  const auto whole = [&](MeasurementName name) { return with_ease(body, ease, name); };
  Targets t;
  t.neck = 0.5 * whole(NeckBaseGirth);
  t.back_length = whole(BackWaistLength);
  t.front_length = whole(FrontWaistLength);
  t.neck_to_bust = whole(SideNeckToBustPoint);
  t.under_bust = under_bust_length(body, ease, settlement);
  t.bust_point_x = 0.5 * whole(BustPointWidth);
  t.shoulder = whole(ShoulderLength);
  if (body.has(FrontShoulderSlant)) t.front_slant = whole(FrontShoulderSlant);
  if (body.has(BackShoulderSlant)) t.back_slant = whole(BackShoulderSlant);
  t.slope = Angle::degrees(whole(ShoulderSlope));
  t.slope_is_taped = body.taped(ShoulderSlope);
  t.across_back = 0.5 * whole(AcrossBack);
  t.across_front = 0.5 * whole(AcrossFront);
  t.upper_chest = 0.5 * whole(UpperChestGirth);
  t.bust = 0.5 * whole(BustGirth);
  t.waist = 0.5 * whole(WaistGirth);
  t.armhole = whole(ArmscyeGirth);
  t.side_length = whole(SideLength);
  t.scye_depth = body[ScyeDepth];
  t.cup = body[BustGirth] - body[UnderbustGirth];
  if (body.has(FrontBustWidth)) t.front_bust = 0.5 * whole(FrontBustWidth);
  t.across_front_is_taped = body.taped(AcrossFront);
  t.over_bust_is_taped = body.taped(SideNeckToWaist);
  t.front_length_is_taped = body.taped(FrontWaistLength);
  return t;
}

}  // namespace blockwright
