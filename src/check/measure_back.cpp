#include "checks.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum MeasurementName;

/// Differences below these pass as notes: a second reading of a tape differs by as much. Common
/// practice, no source.
constexpr ByKind kSmallDifference{
    .girth = Length::mm(20), .length = Length::mm(10), .angle = Measure::degrees(2)};
/// Measurements that are settled together may differ by more: by the doubt of where an armhole line
/// is on a body, two standard deviations of what the settlement takes it for. Ours.
Measure small_difference(MeasurementName name) {
  switch (name) {
    case UpperChestGirth:
      return Length::mm(40);
    case AcrossBack:
    case AcrossFront:
      return Length::mm(25);
    case FrontWaistLength:
    case SideNeckToWaist:
      return kFrontLengthsRepeat;
    default:
      return kSmallDifference.of(name);
  }
}
/// How much longer than its armscye, ease and all, an armhole of a large armscye may be without a
/// word: 20 mm over an ease of 35 on the survey's mean of 371 mm, in proportion. Ours.
constexpr double kArmholeOverArmscye = 0.148;
/// ... and what that leaves for this adjustment.
Measure small_adjustment(const CheckInput& input, const Adjustment& a) {
  const Measure small = small_difference(a.name);
  if (a.name != ArmscyeGirth || a.by.number() < 0.0) return small;
  const Length room =
      kArmholeOverArmscye * input.body.length(ArmscyeGirth) - input.ease.length(ArmscyeGirth);
  return std::max(small, Measure(room));
}

/// Above these multiples of the small differences a taped set contradicts itself too far to be cut.
constexpr double kTooFar = 8.0;
/// Below this nothing is said: a pencil line, in mm or degrees.
constexpr double kNothing = 0.5;

Measure adjustment_of(const CheckInput& input, MeasurementName name) {
  Measure sum = measure_of(name, 0.0);
  for (const Adjustment& a : input.adjustments) {
    if (a.name == name) sum += a.by;
  }
  return sum;
}

bool is_closed_by(const Body& body, MeasurementName name) {
  if (!body.has(name)) return false;
  const bool slants = body.has(FrontShoulderSlant) || body.has(BackShoulderSlant);
  return name != ShoulderSlope || !slants;
}

/// An estimate that gives way is no fault of the tape. A taped measurement that gives way by more
/// than a second reading would differ needs a look; by several times that, new measuring.
Severity severity_of(Measure amount, Measure small, bool taped) {
  if (!taped || amount <= small) return Severity::Note;
  return amount <= kTooFar * small ? Severity::Warning : Severity::Error;
}

}  // namespace

std::vector<MeasureBack> measure_back(const CheckInput& input) {
  std::vector<MeasureBack> rows;
  for (const auto& [name, how, again] : back_measures()) {
    const auto* on_pieces = std::get_if<OnPieces>(&how);
    if (on_pieces == nullptr || !is_closed_by(input.body, name)) continue;
    const BodyMeasurement& body = *input.body.measurements[name];
    rows.push_back({name, body.source, body.value, input.ease[name], adjustment_of(input, name),
                    measure_of(name, (*on_pieces)(input.pattern))});
  }
  return rows;
}

Problems check_measure_back(const CheckInput& input) {
  Problems problems;
  for (const MeasureBack& row : measure_back(input)) {
    const Measure off = row.residual() - row.adjustment;
    const Measure most = kMeasureBackTolerance.of(row.name);
    if (abs(off) <= most) continue;
    problems.push_back(
        {.severity = Severity::Error,
         .code = "check.measure_back",
         .where = std::string(info(row.name).key),
         .message = "the pattern is off by " + off + "; at most " + most + " is allowed",
         .hint = "do not cut; please report it with the client file",
         .measurements = {std::string(info(row.name).key)},
         .limit = {.most = most}});
  }
  return problems;
}

Problems check_limits(const CheckInput& input) {
  Problems problems;
  for (const Adjustment& a : input.adjustments) {
    const Measure amount = abs(a.by);
    if (!input.body.has(a.name) || amount.number() < kNothing) continue;
    const bool taped = input.body.taped(a.name);
    const Measure small = small_adjustment(input, a);
    const Severity severity = severity_of(amount, small, taped);
    problems.push_back(
        {.severity = severity,
         .code = "draft.adjusted",
         .where = std::string(info(a.name).key),
         .message = "the pattern has " + amount + (a.by == amount ? " more than " : " less than ") +
                    (taped ? "tape and ease: " : "estimate and ease: ") + a.why,
         .hint = std::string(back_measures()[static_cast<std::size_t>(a.name)].take_again),
         .measurements = {std::string(info(a.name).key)},
         .limit = severity == Severity::Note ? Limit{} : Limit{.most = small}});
  }
  return problems;
}

}  // namespace blockwright
