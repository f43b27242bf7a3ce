#include "blockwright/draft/draft.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/geometry/fixed_point.hpp"
#include "stages.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

Wording amount(Measure value) {
  if (value.is_angle()) return told_number(value.number(), 2) + " degrees";
  return value.length();
}

void require_between(const MeasurementInfo& entry, const char* what, Measure value,
                     const Limit& limit) {
  if (value >= *limit.least && value <= *limit.most) return;
  throw InputError({.severity = Severity::Error,
                    .code = "draft.range",
                    .where = std::string(entry.key),
                    .message = std::string(what) + " of " + amount(value) + " is out of range",
                    .hint = "use " + amount(*limit.least) + " to " + amount(*limit.most),
                    .measurements = {std::string(entry.key)},
                    .limit = limit});
}

void require_limits(const Body& body, const Ease& ease) {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const Measure most = most_ease(entry.name);
    require_between(entry, "an ease", ease[entry.name], {-most, most});
    if (!body.has(entry.name)) continue;
    require_between(entry, "a measurement", body[entry.name], {entry.least, entry.most});
  }
}

Ease ease_as_drawn(const Ease& asked, double drop) {
  Ease ease = asked;
  ease.set(MeasurementName::SideLength,
           asked[MeasurementName::SideLength] - Length::mm(std::max(drop, 0.0)));
  return ease;
}

constexpr int kMostPasses = 40;
constexpr double kSettledWithin = 1e-8;  // mm

/// What is assumed, all in mm: a radian of the bust dart moves the lines at its ends about so far.
using AssumedPoint = FixedPoint<7>;
constexpr double kMmPerRadian = 200.0;

AssumedPoint::Values values_of(const Assumed& a) {
  return {kMmPerRadian * a.bust_dart.radians(),
          a.across_back,
          a.front_bust,
          a.underarm,
          a.front_width,
          a.back_width,
          a.back_side_waist};
}

Assumed assumed_of(const AssumedPoint::Values& v) {
  return {Angle::radians(v[0] / kMmPerRadian), v[1], v[2], v[3], v[4], v[5], v[6]};
}

double largest_change(const AssumedPoint::Values& from, const AssumedPoint::Values& to) {
  double most = 0.0;
  for (std::size_t i = 0; i < from.size(); ++i) most = std::max(most, std::abs(to[i] - from[i]));
  return most;
}

/// The lines that hang together: drawn again until what was assumed is what came out.
struct Drawn {
  NeckAndShoulder upper;
  Armholes lower;
};

Drawn drawn(const Targets& t) {
  AssumedPoint point;
  AssumedPoint::Values assumed = values_of(first_guess(t));
  for (int pass = 1;; ++pass) {
    const Assumed with = assumed_of(assumed);
    const NeckAndShoulder upper = neck_and_shoulder(t, with);
    const Armholes lower = armholes(t, upper, with);
    const AssumedPoint::Values came_out = values_of(assumed_next(t, with, lower));
    const bool settled = largest_change(assumed, came_out) < kSettledWithin;
    if (settled || pass == kMostPasses) return {upper, lower};
    assumed = point.next(assumed, came_out);
  }
}

}  // namespace

DraftedBlock draft_block(const Body& body, const Ease& asked) {
  const Ease ease = asked.worn_by(body);
  require_limits(body, ease);
  Ledger ledger;
  Targets targets = targets_for(body, ease, ledger);
  const std::optional<OddNeck> odd_neck = bring_neck_within_bounds(targets, ledger);
  const auto [upper, lower] = drawn(targets);
  account_for_shoulders(targets, upper, ledger);
  account_for_armholes(targets, upper, lower, ledger);

  DraftedBlock block;
  block.pattern.pieces = {front_block(upper, lower, targets.cup),
                          back_block(upper, lower, targets.cup)};
  block.pattern.seams = seams_between(block.pattern.pieces);
  block.log = steps(targets, upper, lower, block.pattern);
  block.ease = ease_as_drawn(ease, lower.drop);
  block.adjustments = ledger.adjustments();
  block.odd_neck = odd_neck;
  return block;
}

}  // namespace blockwright
