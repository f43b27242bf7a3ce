#include "blockwright/draft/draft.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/geometry/fixed_point.hpp"
#include "blockwright/measure/settled_tape.hpp"
#include "rules.hpp"
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

/// Most drafts settle after 8 to 14 drawings. One that has not after 25 swings about the place
/// where a further waist dart appears: from there it must be wider to appear.
constexpr int kPassesBeforeSwinging = 25;
/// Out of 24,000 drafts, of people and of extremes, none needed more than 35.
constexpr int kLastPass = 60;
constexpr double kSettledWithin = rules::kSolved;
/// What contradicts itself may have no answer, and is refused by the checks. In mm.
constexpr double kFarthestGuess = 100.0;

/// What is assumed, all in mm: so far the lines at their ends move for a radian of these angles.
using AssumedPoint = FixedPoint<14>;
constexpr double kMmPerRadian = 200.0;

AssumedPoint::Values values_of(const Assumed& a) {
  return {kMmPerRadian * a.bust_dart.radians(),
          a.across_back,
          a.front_bust,
          a.underarm,
          a.front_width,
          a.back_width,
          a.back_side_waist,
          a.neck_width,
          kMmPerRadian * a.front_slope.radians(),
          kMmPerRadian * a.back_slope.radians(),
          a.front_intake,
          a.back_intake,
          a.side_run,
          a.drop};
}

Assumed assumed_of(const AssumedPoint::Values& v) {
  const auto angle = [](double mm) { return Angle::radians(mm / kMmPerRadian); };
  return {angle(v[0]), v[1],        v[2],        v[3],  v[4],  v[5],  v[6],
          v[7],        angle(v[8]), angle(v[9]), v[10], v[11], v[12], v[13]};
}

double largest_change(const AssumedPoint::Values& from, const AssumedPoint::Values& to) {
  double most = 0.0;
  for (std::size_t i = 0; i < from.size(); ++i) most = std::max(most, std::abs(to[i] - from[i]));
  return most;
}

/// All lines, each from what is assumed of the others.
Drawn drawn_with(const Targets& t, const Assumed& assumed) {
  const NeckAndShoulder upper = neck_and_shoulder(t, assumed);
  const Waists sewn = waists(t, assumed, upper.bust_point);
  return {upper, sewn, armholes(t, upper, sewn, assumed)};
}

/// What the next drawing is to assume.
Assumed corrected(const Targets& t, const Drawn& drawn, Assumed assumed) {
  correct_neck_and_shoulder(t, drawn.upper, assumed);
  correct_armholes(t, drawn, assumed);
  correct_waists(t, drawn.waists, assumed);
  return assumed;
}

Assumed first_guess(const Targets& t) {
  Assumed a;
  guess_neck_and_shoulder(t, a);
  guess_armholes(t, a);
  guess_waists(t, a);
  return a;
}

/// The lines hang together: drawn again until what was assumed is what came out.
Drawn drawn(const Targets& t) {
  AssumedPoint point(kFarthestGuess);
  Assumed assumed = first_guess(t);
  for (int pass = 1;; ++pass) {
    Drawn all = drawn_with(t, assumed);
    const AssumedPoint::Values tried = values_of(assumed);
    const AssumedPoint::Values came_out = values_of(corrected(t, all, assumed));
    const double off = largest_change(tried, came_out);
    if (off < kSettledWithin || pass == kLastPass) return all;
    assumed = assumed_of(point.next(tried, came_out));
    if (pass >= kPassesBeforeSwinging) assumed.least_further_dart = 2.0 * kLeastMouth;
  }
}

/// A draft and what led to it.
struct Draft {
  Targets targets;
  Drawn drawn;
  DraftedBlock block;
};

/// The front neck that the two front lengths ask for as they were taped.
std::optional<OddNeck> odd_neck_as_taped(const Body& body, const Ease& ease) {
  Ledger unused;
  return odd_neck(targets_for(body, ease, unused));
}

Draft draft(const Body& body, const Ease& asked) {
  require_limits(body, asked.worn_by(body));
  const SettledTape tape = settle_tape(body);
  const Ease ease = asked.worn_by(tape.body);
  Ledger ledger;
  for (const Adjustment& moved : tape.moved) ledger.adjust(moved.name, moved.by, moved.why);
  Draft d;
  d.block.odd_neck = odd_neck_as_taped(body, ease);
  d.targets = targets_for(tape.body, ease, ledger);
  bring_neck_within_bounds(d.targets, ledger);
  d.drawn = drawn(d.targets);
  account_for_shoulders(d.targets, d.drawn.upper, ledger);
  account_for_armholes(d.targets, d.drawn, ledger);
  d.block.adjustments = ledger.adjustments();
  d.block.pattern.pieces = {front_block(d.drawn, d.targets.cup),
                            back_block(d.drawn, d.targets.cup)};
  d.block.pattern.seams = seams_between(d.block.pattern.pieces);
  d.block.ease = ease_as_drawn(ease, d.drawn.lower.drop);
  return d;
}

}  // namespace

DraftedBlock draft_block(const Body& body, const Ease& ease) { return draft(body, ease).block; }

DraftLog draft_steps(const Body& body, const Ease& ease) {
  const auto [targets, drawn, block] = draft(body, ease);
  return steps(targets, drawn, block.pattern);
}

}  // namespace blockwright
