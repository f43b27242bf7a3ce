#include "back_measures.hpp"
#include "blockwright/base/number_text.hpp"
#include "checks.hpp"

#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

/// Differences below these pass as notes: what a second reading of a tape differs by anyway (docs/
/// sources.md, measuring error).
constexpr double kSmallGirth = 20.0;
constexpr double kSmallLength = 10.0;
constexpr double kSmallAngle = 2.0;
/// Above these multiples of the small differences a taped set contradicts itself too far to be cut.
constexpr double kTooFar = 8.0;
/// Below this nothing is said: a pencil line, in mm or degrees.
constexpr double kNothing = 0.5;

double adjustment_of(const CheckInput& input, MeasurementName name) {
  double sum = 0.0;
  for (const Adjustment& a : input.adjustments) sum += a.name == name ? a.by : 0.0;
  return sum;
}

bool is_closed_by(const Body& body, MeasurementName name) {
  if (!body.has(name)) return false;
  const bool slants = body.has(FrontShoulderSlant) || body.has(BackShoulderSlant);
  return name != ShoulderSlope || !slants;
}

Wording amount_text(MeasurementName name, double amount) {
  if (info(name).kind != MeasurementKind::Angle) return Length::mm(amount);
  return fixed(amount, 1) + " degrees";
}

double small_difference(MeasurementName name) {
  return by_kind(info(name).kind, kSmallGirth, kSmallLength, kSmallAngle);
}

/// An estimate that gives way is no fault of the tape. A taped measurement that gives way by more
/// than a second reading would differ needs a look; by several times that, new measuring.
Severity severity_of(MeasurementName name, double amount, bool taped) {
  if (!taped || amount <= small_difference(name)) return Severity::Note;
  return amount <= kTooFar * small_difference(name) ? Severity::Warning : Severity::Error;
}

}  // namespace

std::vector<MeasureBack> measure_back(const CheckInput& input) {
  std::vector<MeasureBack> rows;
  for (const auto& [name, how, again] : back_measures()) {
    const auto* on_pieces = std::get_if<OnPieces>(&how);
    if (on_pieces == nullptr || !is_closed_by(input.body, name)) continue;
    const BodyMeasurement& body = *input.body.measurements[name];
    rows.push_back({name, body.source, body.value, input.ease[name], adjustment_of(input, name),
                    (*on_pieces)(input.pattern)});
  }
  return rows;
}

Problems check_measure_back(const CheckInput& input) {
  Problems problems;
  for (const MeasureBack& row : measure_back(input)) {
    const double off = row.residual() - row.adjustment;
    if (std::abs(off) <= kMeasureBackTolerance) continue;
    problems.push_back({Severity::Error,
                        "check.measure_back",
                        std::string(info(row.name).key),
                        "the pattern is off by " + amount_text(row.name, off) + "; at most " +
                            amount_text(row.name, kMeasureBackTolerance) + " is allowed",
                        "do not cut; please report it with the client file",
                        {std::string(info(row.name).key)}});
  }
  return problems;
}

Problems check_limits(const CheckInput& input) {
  Problems problems;
  for (const Adjustment& a : input.adjustments) {
    const double amount = std::abs(a.by);
    if (!input.body.has(a.name) || amount < kNothing) continue;
    const bool taped = input.body.taped(a.name);
    problems.push_back({severity_of(a.name, amount, taped),
                        "draft.adjusted",
                        std::string(info(a.name).key),
                        "the pattern has " + amount_text(a.name, amount) +
                            (a.by > 0.0 ? " more than " : " less than ") +
                            (taped ? "tape and ease: " : "estimate and ease: ") + a.why,
                        std::string(back_measures()[static_cast<std::size_t>(a.name)].take_again),
                        {std::string(info(a.name).key)}});
  }
  return problems;
}

}  // namespace blockwright
