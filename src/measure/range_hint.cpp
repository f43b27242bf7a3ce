#include "measure_text.hpp"
#include "slips.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

// A reading this near to its limit may be right; then only what is ordinary for her is guessed.
// Common practice, no source.
constexpr double kNear = 1.1;
// Of 2,208 women none is further off (computed: 5.1 SD).
constexpr double kPlausibleSd = 5.2;
// Busts differ more than the survey's.
constexpr double kBustsDiffer = 1.2;
constexpr double kPlausibleBustSd = 6.5;  // to 140 cm

std::string take_again(const MeasurementInfo& entry) {
  return fmt::format("take it again: {}", entry.how);
}

// Anything within the limits is as plausible, about their middle most.
Expectation within_limits(const MeasurementInfo& entry) {
  const double middle = std::sqrt(entry.least.number() * entry.most.number());
  return {measure_of(entry.name, middle), 1.0 / kPlausibleSd * (entry.most - entry.least)};
}

Expectation plausible(const MeasurementInfo& entry, const std::optional<Measure>& bust) {
  if (!survey_place(entry.name)) return within_limits(entry);
  if (entry.name == MeasurementName::BustGirth || !bust) {
    const Expectation usual = Regression().expected(entry.name);
    return {usual.value, kBustsDiffer * usual.sd};
  }
  Regression regression(beyond_survey(*bust));
  regression.learn(MeasurementName::BustGirth, *bust);
  return regression.expected(entry.name);
}

bool is_near_limit(const MeasurementInfo& entry, Measure value) {
  return value > entry.least / kNear && value < kNear * entry.most;
}

// How far from that a guess may lie. Without her bust a value near its limit is left alone.
double most_sd(const MeasurementInfo& entry, Measure value, const std::optional<Measure>& bust) {
  const bool known = bust && entry.name != MeasurementName::BustGirth;
  if (is_near_limit(entry, value)) return known ? kDoubtfulSd : 0.0;
  return entry.name == MeasurementName::BustGirth ? kPlausibleBustSd : kPlausibleSd;
}

}  // namespace

std::string range_hint(const MeasurementInfo& entry, const Written& written,
                       const std::optional<Measure>& bust) {
  const Measure value = measured(written.number, entry.kind, written.unit);
  if (entry.allows(-value)) {
    return fmt::format("did you mean {}? A measurement has no minus sign",
                       measure_text(-value, written.unit));
  }
  if (written.number <= 0.0) return "leave the key out if the measurement was not taken";
  const auto meant = likely_ones(possibly_meant(entry, written), plausible(entry, bust),
                                 most_sd(entry, value, bust));
  if (meant.empty()) return take_again(entry);
  std::string hint = fmt::format("did you mean {}?", meant_text(meant[0], written.unit));
  if (meant.size() > 1) hint += fmt::format(" Or {}?", meant_text(meant[1], written.unit));
  return hint;
}

}  // namespace blockwright
