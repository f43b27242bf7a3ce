#include "survey.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum MeasurementName;

// The orderings that hold on all 2,208 women of the 1988 survey (Gordon et al. 1989,
// NATICK/TR-89/044). Each gap is about half of the smallest difference on every second of its rows
// (beside it): small enough for any body, large enough for a draft. Side length and side neck to
// waist were derived there from heights.
// No measurement is the smaller one here and the larger one there, so no order undoes another.
constexpr auto mm = [](double value) { return Length::mm(value); };
constexpr std::array<Ordering, 11> kOrderings{{
    {UnderbustGirth, 1.0, UpperChestGirth, mm(10)},       // 21 mm
    {WaistGirth, 1.0, BustGirth, mm(0), Severity::Note},  // 58 mm; older bodies differ
    {WaistGirth, 1.0, HipGirth, mm(0), Severity::Note},   // 83 mm; older bodies differ
    {ScyeDepth, 1.0, BackWaistLength, mm(50)},            // 106 mm
    {ShoulderLength, 2.0, AcrossBack, mm(10)},            // 23 mm
    {UpperArmGirth, 1.0, ArmscyeGirth, mm(18)},           // 36 mm
    {BustPointWidth, 1.0, AcrossBack, mm(55)},            // 110 mm
    {SideLength, 1.0, BackWaistLength, mm(60)},           // 121 mm
    {SideNeckToBustPoint, 1.0, SideNeckToWaist, mm(20)},  // 39 mm
    {FrontWaistLength, 1.0, SideNeckToWaist, mm(20)},     // 38 mm
    {BustPointWidth, 1.0, FrontBustWidth, mm(55)},        // not surveyed: it spans both bust points
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
