#include "blockwright/measure/ease.hpp"

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr double kMostLengthEase = 200.0;  // mm
constexpr double kMostSlopeEase = 15.0;    // degrees

}  // namespace

double most_ease(MeasurementName name) {
  return by_kind(info(name).kind, kMostLengthEase, kMostLengthEase, kMostSlopeEase);
}

Ease Ease::of_toile() {
  Ease ease;
  for (const MeasurementInfo& entry : kMeasurements) ease.set(entry.name, entry.ease.by);
  return ease;
}

Ease Ease::of(const Client& client) {
  Ease ease = of_toile();
  if (const auto& bust = client.ease[BustGirth]) ease.set(FrontBustWidth, 0.5 * *bust);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (const auto& override_mm = client.ease[entry.name]) ease.set(entry.name, *override_mm);
  }
  return ease;
}

}  // namespace blockwright
