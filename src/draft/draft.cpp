#include "blockwright/draft/draft.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/block/drafted_piece.hpp"
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

/// Each drawing comes nearer by about a digit.
constexpr int kMostPasses = 40;
constexpr double kSettledWithin = 1e-8;  // mm, and radians of the bust dart
/// ... unless two swing about the answer: then less is gained than this.
constexpr double kSwings = 0.5;

double changes(const Assumed& a, const Assumed& b) {
  return std::max({std::abs((a.bust_dart - b.bust_dart).radians()),
                   std::abs(a.across_back - b.across_back), std::abs(a.front_bust - b.front_bust),
                   std::abs(a.underarm - b.underarm), std::abs(a.front_width - b.front_width),
                   std::abs(a.back_width - b.back_width)});
}

/// The lines that hang together: drawn again until what was assumed is what came out.
struct Drawn {
  NeckAndShoulder upper;
  Armholes lower;
};

/// Half way between two drawings that swing about the answer.
Assumed between(const Assumed& a, const Assumed& b) {
  const auto middle = [](auto x, auto y) { return 0.5 * (x + y); };
  return {middle(a.bust_dart, b.bust_dart),     middle(a.across_back, b.across_back),
          middle(a.front_bust, b.front_bust),   middle(a.underarm, b.underarm),
          middle(a.front_width, b.front_width), middle(a.back_width, b.back_width)};
}

Drawn drawn(const Targets& t) {
  Assumed assumed = first_guess(t);
  double before = 0.0;
  for (int pass = 1;; ++pass) {
    const NeckAndShoulder upper = neck_and_shoulder(t, assumed);
    const Armholes lower = armholes(t, upper, assumed);
    const Assumed came_out = assumed_next(t, assumed, lower);
    const double change = changes(assumed, came_out);
    if (pass == kMostPasses || change < kSettledWithin) return {upper, lower};
    const bool swings = pass > 1 && change > kSwings * before;
    assumed = swings ? between(assumed, came_out) : came_out;
    before = change;
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
