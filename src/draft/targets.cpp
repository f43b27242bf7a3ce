#include "blockwright/block/kinds.hpp"
#include "rules.hpp"
#include "stages.hpp"

#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

/// A smaller change of a measurement, in mm or degrees, is rounding.
constexpr double kWorthTelling = 1e-3;

double with_ease(const Body& body, const Ease& ease, LengthName name) {
  return (body.length(name) + ease.length(name)).mm();
}

std::optional<double> slant(const Body& body, const Ease& ease, LengthName name) {
  if (!body.has(name)) return std::nullopt;
  return with_ease(body, ease, name);
}

/// What is estimated gives way first, then what is taped, last what the maker is sure of.
int trust(const Body& body, MeasurementName name) {
  return (body.taped(name) ? 1 : 0) + (body.sure(name) ? 1 : 0);
}

Wish half_width(const Body& body, const Ease& ease, LengthName name) {
  const double gives = body.sure(name)    ? rules::kSureGives
                       : body.taped(name) ? rules::kTapedGives
                                          : rules::kEstimatedGives;
  return {0.5 * with_ease(body, ease, name), gives};
}

/// Requires: both in mm, without ease.
Angle usual_bust_dart(double bust, double cup) {
  return rules::kUsualBustDart +
         Angle::degrees(rules::kDartDegreesPerCup * (cup - kUsualCup) +
                        rules::kDartDegreesPerBust * (bust - rules::kUsualBust));
}

double under_bust_length(const Body& body, const Ease& ease, Ledger& ledger) {
  const double length =
      with_ease(body, ease, SideNeckToWaist) - with_ease(body, ease, SideNeckToBustPoint);
  const double least = rules::kLeastUnderBust;
  if (length >= least) return length;
  ledger.adjust(SideNeckToWaist, Length::mm(least - length),
                "the bust point must lie at least " + Length::mm(least) + " above the waist");
  return least;
}

}  // namespace

void Ledger::adjust(MeasurementName name, Measure by, const Wording& why) {
  if (std::abs(by.number()) > kWorthTelling) adjustments_.push_back({name, by, why});
}

Targets targets_for(const Body& body, const Ease& ease, Ledger& ledger) {
  const auto whole = [&](LengthName name) { return with_ease(body, ease, name); };
  Targets t;
  t.neck = 0.5 * whole(NeckBaseGirth);
  t.back_length = whole(BackWaistLength);
  t.front_length = whole(FrontWaistLength);
  t.neck_to_bust = whole(SideNeckToBustPoint);
  t.under_bust = under_bust_length(body, ease, ledger);
  t.bust_point_x = 0.5 * whole(BustPointWidth);
  t.shoulder = whole(ShoulderLength);
  t.front_slant = slant(body, ease, FrontShoulderSlant);
  t.back_slant = slant(body, ease, BackShoulderSlant);
  t.slope = (body[ShoulderSlope] + ease[ShoulderSlope]).angle();
  t.slope_is_taped = body.taped(ShoulderSlope);
  t.across_back = half_width(body, ease, AcrossBack);
  t.across_front = half_width(body, ease, AcrossFront);
  t.upper_chest = {0.5 * whole(UpperChestGirth),
                   body.sure(UpperChestGirth) ? rules::kSureGives : rules::kUpperChestGives};
  t.bust = 0.5 * whole(BustGirth);
  t.waist = 0.5 * whole(WaistGirth);
  t.armhole = whole(ArmscyeGirth);
  t.side_length = whole(SideLength);
  t.scye_depth = body.length(ScyeDepth).mm();
  t.cup = (body.length(BustGirth) - body.length(UnderbustGirth)).mm();
  t.arm = body.length(UpperArmGirth).mm();
  t.usual_bust_dart = usual_bust_dart(body.length(BustGirth).mm(), t.cup);
  t.front_hold_back = hold_back(position_on(kBodiceFront, BlockEdge::Shoulder), t.cup);
  t.back_hold_back = hold_back(position_on(kBodiceBack, BlockEdge::Shoulder), t.cup);
  if (body.has(FrontBustWidth)) t.front_bust = 0.5 * whole(FrontBustWidth);
  t.over_bust_gives_way = trust(body, FrontWaistLength) > trust(body, SideNeckToWaist);
  return t;
}

}  // namespace blockwright
