#include "tape_error.hpp"

#include "blockwright/measure/body.hpp"
#include "client/client_file.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// The mean range of so many readings of a normal distribution, in SDs of one: the d2 of control
// charts (from memory; a test draws them).
constexpr std::array<double, kMostReadings + 1> kRangeOf{
    0.0,   0.0,   1.128, 1.693, 2.059, 2.326, 2.534, 2.704, 2.847, 2.970, 3.078,
    3.173, 3.258, 3.336, 3.407, 3.472, 3.532, 3.588, 3.640, 3.689, 3.735};

// Half of the variance of a reading is of where the tape was laid, which the next one repeats.
// Ours.
constexpr double kRepeats = 0.5;

}  // namespace

Measure tape_sd(MeasurementName name) { return kTapeErrors[static_cast<std::size_t>(name)].sd; }

Measure taped_sd(const Body& body, MeasurementName name) {
  const BodyMeasurement& taped = *body.measurements[name];
  const Measure sd = tape_sd(name);
  if (taped.readings < 2) return sd;
  const std::size_t counted = std::min(taped.readings, kMostReadings);
  const double usual = std::sqrt(1.0 - kRepeats);
  const double own = std::max(usual, taped.doubt / sd / kRangeOf[counted]);
  return std::sqrt(kRepeats + own * own / static_cast<double>(counted)) * sd;
}

}  // namespace blockwright
