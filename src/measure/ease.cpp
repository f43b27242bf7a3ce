#include "blockwright/measure/ease.hpp"

namespace blockwright {

Measure most_ease(MeasurementName name) {
  constexpr ByKind most{
      .girth = Length::mm(200), .length = Length::mm(200), .angle = Measure::degrees(15)};
  return most.of(name);
}

Ease Ease::of(const Client& client) {
  using enum MeasurementName;
  Ease ease = of_toile();
  if (const auto& bust = client.ease[BustGirth]) ease.set(FrontBustWidth, 0.5 * *bust);
  for (const MeasurementInfo& entry : kMeasurements) {
    if (const auto& own = client.ease[entry.name]) ease.set(entry.name, *own);
  }
  return ease;
}

}  // namespace blockwright
