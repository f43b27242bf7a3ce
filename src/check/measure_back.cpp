#include "measure_back.hpp"

#include "block_measures.hpp"
#include "blockwright/base/number_text.hpp"

#include <algorithm>
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

std::string unit_of(MeasurementName name) {
  return info(name).kind == MeasurementKind::Angle ? " degrees" : " mm";
}

/// An amount as the person reads her tape.
std::string amount_text(MeasurementName name, double amount, Unit unit) {
  if (info(name).kind == MeasurementKind::Angle) return fixed(amount, 1) + " degrees";
  return unit == Unit::Cm ? fixed(amount / 10.0, 1) + " cm" : inch_fraction(amount / 25.4) + " in";
}

double small_difference(MeasurementName name) {
  switch (info(name).kind) {
    case MeasurementKind::Girth:
      return kSmallGirth;
    case MeasurementKind::Length:
      return kSmallLength;
    case MeasurementKind::Angle:
      return kSmallAngle;
  }
  return kSmallLength;
}

/// An estimate that gives way is no fault of the tape. A taped measurement that gives way by more
/// than a second reading would differ needs a look; by several times that, new measuring.
Severity severity_of(MeasurementName name, double amount, bool taped) {
  if (!taped || amount <= small_difference(name)) return Severity::Note;
  return amount <= kTooFar * small_difference(name) ? Severity::Warning : Severity::Error;
}

/// What to take again where a measurement had to give way.
std::string_view take_again(MeasurementName name) {
  switch (name) {
    case UpperChestGirth:
      return "take upper_chest_girth, across_back, across_front and armscye_girth again";
    case AcrossBack:
    case AcrossFront:
      return "take across_back, across_front, shoulder_length and the shoulder slants again";
    case FrontWaistLength:
    case SideNeckToWaist:
      return "take front_waist_length, side_neck_to_bust_point and side_neck_to_waist again";
    case ArmscyeGirth:
    case SideLength:
      return "take armscye_girth, side_length and side_neck_to_waist again";
    case ShoulderSlope:
    case FrontShoulderSlant:
    case BackShoulderSlant:
      return "take shoulder_length and the shoulder slants again";
    case FrontBustWidth:
      return "take front_bust_width and across_back again";
    default:
      return "take this measurement again";
  }
}

}  // namespace

std::vector<MeasureBack> measure_back(const CheckInput& input) {
  const BlockMeasures block(input.pattern);
  std::vector<MeasureBack> rows;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (!is_closed_by(input.body, entry.name)) continue;
    const auto pattern = block.measured(entry.name);
    if (!pattern) continue;
    const BodyMeasurement& body = *input.body.measurements[entry.name];
    rows.push_back({entry.name, body.source, body.value, input.ease[entry.name],
                    adjustment_of(input, entry.name), *pattern});
  }
  return rows;
}

Problems check_measure_back(const CheckInput& input) {
  Problems problems;
  for (const MeasureBack& row : measure_back(input)) {
    const double off = row.residual() - row.adjustment;
    if (std::abs(off) <= kMeasureBackTolerance) continue;
    problems.push_back({Severity::Error, "check.measure_back", std::string(info(row.name).key),
                        "the pattern is off by " + fixed(off, 2) + unit_of(row.name) +
                            "; at most " + fixed(kMeasureBackTolerance, 1) + " is allowed",
                        "do not cut; please report it with the client file"});
  }
  return problems;
}

Problems check_limits(const CheckInput& input) {
  Problems problems;
  for (const Adjustment& a : input.adjustments) {
    const double amount = std::abs(a.by);
    if (!input.body.has(a.name) || amount < kNothing) continue;
    const bool taped = input.body.taped(a.name);
    problems.push_back({severity_of(a.name, amount, taped), "draft.limited",
                        std::string(info(a.name).key),
                        "the pattern has " + amount_text(a.name, amount, input.unit) +
                            (a.by > 0.0 ? " more than " : " less than ") +
                            (taped ? "tape and ease: " : "estimate and ease: ") + a.why,
                        std::string(take_again(a.name))});
  }
  return problems;
}

}  // namespace blockwright
