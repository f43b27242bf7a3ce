#include "measure_text.hpp"
#include "slips.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// A reading this near to its limit may be right; then only what is ordinary for her is guessed.
// Common practice, no source.
constexpr double kNear = 1.1;
// Busts differ more than the survey's.
constexpr double kBustsDiffer = 1.2;
// The limits of what was not surveyed lie so many SD apart; about what they do of the others.
constexpr double kLimitsApart = 20.0;

std::string take_again(const MeasurementInfo& entry) {
  return fmt::format("take it again: {}", entry.how);
}

// What was not surveyed is likeliest in the middle of its limits.
Expectation within_limits(const MeasurementInfo& entry) {
  const double middle = std::sqrt(entry.least.number() * entry.most.number());
  return {measure_of(entry.name, middle), (entry.most - entry.least) / kLimitsApart};
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

// Those that are plausible of her. Without her bust a value near its limit is left alone.
std::vector<Meant> plausible_ones(const MeasurementInfo& entry, const Written& written,
                                  const std::optional<Measure>& bust) {
  const Expectation expected = plausible(entry, bust);
  const bool near = is_near_limit(entry, measured(written.number, entry.kind, written.unit));
  const bool known = bust && entry.name != MeasurementName::BustGirth;
  const double most = !near ? INFINITY : known ? kDoubtfulSd : 0.0;
  std::vector<Meant> all = possibly_meant(entry, written);
  std::erase_if(all, [&](const Meant& meant) {
    const double odd = std::abs((meant.value - expected.value) / expected.sd);
    return odd > std::min(most, meant.slip->guessed_within);
  });
  return likely_ones(all, expected, INFINITY);
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
  const std::vector<Meant> meant = plausible_ones(entry, written, bust);
  if (meant.empty()) return take_again(entry);
  std::string hint = fmt::format("did you mean {}?", meant_text(meant[0], written.unit));
  if (meant.size() > 1) hint += fmt::format(" Or {}?", meant_text(meant[1], written.unit));
  return hint;
}

}  // namespace blockwright
