#include "orderings.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum MeasurementName;

// The orderings that hold on all 2,208 women of the 1988 survey (Gordon et al. 1989,
// NATICK/TR-89/044). Each gap is about half of the smallest difference on every second of its rows
// (beside it): small enough for any body, large enough for a draft. Side length and side neck to
// waist were derived there from heights.
// No measurement is the smaller one here and the larger one there, so no order undoes another.
constexpr std::array<Ordering, 11> kOrderings{{
    {UnderbustGirth, 1.0, UpperChestGirth, 10.0},       // 21 mm
    {WaistGirth, 1.0, BustGirth, 0.0, Severity::Note},  // 58 mm; older bodies differ
    {WaistGirth, 1.0, HipGirth, 0.0, Severity::Note},   // 83 mm; older bodies differ
    {ScyeDepth, 1.0, BackWaistLength, 50.0},            // 106 mm
    {ShoulderLength, 2.0, AcrossBack, 10.0},            // 23 mm
    {UpperArmGirth, 1.0, ArmscyeGirth, 18.0},           // 36 mm
    {BustPointWidth, 1.0, AcrossBack, 55.0},            // 110 mm
    {SideLength, 1.0, BackWaistLength, 60.0},           // 121 mm
    {SideNeckToBustPoint, 1.0, SideNeckToWaist, 20.0},  // 39 mm
    {FrontWaistLength, 1.0, SideNeckToWaist, 20.0},     // 38 mm
    {BustPointWidth, 1.0, FrontBustWidth, 55.0},        // not surveyed: it spans both bust points
}};

void keep_gap(Body& body, const Ordering& order) {
  auto& smaller = body.measurements[order.smaller];
  auto& larger = body.measurements[order.larger];
  if (!smaller || !larger) return;
  if (!body.taped(order.larger)) {
    larger->value = std::max(larger->value, order.times * smaller->value + order.gap);
  } else if (!body.taped(order.smaller)) {
    smaller->value = std::min(smaller->value, (larger->value - order.gap) / order.times);
  }
}

}  // namespace

const std::array<Ordering, 11>& orderings() { return kOrderings; }

void keep_order(Body& body) {
  for (const Ordering& order : kOrderings) keep_gap(body, order);
}

}  // namespace blockwright
