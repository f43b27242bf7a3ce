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

double adjustment_of(const CheckInput& input, MeasurementName name) {
  for (const Adjustment& a : input.adjustments) {
    if (a.name == name) return a.by;
  }
  return 0.0;
}

bool is_closed_by(const Body& body, MeasurementName name) {
  if (!body.has(name)) return false;
  const bool slants = body.has(FrontShoulderSlant) || body.has(BackShoulderSlant);
  return name != ShoulderSlope || !slants;
}

std::string unit_of(MeasurementName name) {
  return info(name).kind == MeasurementKind::Angle ? " degrees" : " mm";
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
    if (!input.body.has(a.name)) continue;
    const bool matters = input.body.taped(a.name) && std::abs(a.by) > small_difference(a.name);
    const std::string more = a.by > 0.0 ? " more than " : " less than ";
    problems.push_back({matters ? Severity::Warning : Severity::Note, "draft.limited",
                        std::string(info(a.name).key),
                        "the pattern has " + fixed(std::abs(a.by), 1) + unit_of(a.name) + more +
                            (input.body.taped(a.name) ? "tape and ease: " : "estimate and ease: ") +
                            a.why,
                        std::string(take_again(a.name))});
  }
  return problems;
}

}  // namespace blockwright
