#include "blockwright/draft/draft.hpp"

#include "blocks.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "limits.hpp"
#include "neck_shoulder.hpp"
#include "scye.hpp"
#include "steps.hpp"
#include "targets.hpp"

#include <algorithm>

namespace blockwright {
namespace {

Ease ease_as_drawn(const Ease& asked, double drop) {
  Ease ease = asked;
  ease.set(MeasurementName::SideLength, asked[MeasurementName::SideLength] - std::max(drop, 0.0));
  return ease;
}

}  // namespace

DraftedBlock draft_block(const Body& body, const Ease& ease) {
  require_limits(body, ease);
  Settlement settlement;
  Targets targets = targets_for(body, ease, settlement);
  const NeckAndShoulder upper = neck_and_shoulder(targets, settlement);
  const Scye lower = scye(targets, upper, settlement);

  DraftedBlock block;
  block.pattern.pieces = {front_block(upper, lower, targets.cup),
                          back_block(upper, lower, targets.cup)};
  block.pattern.seams = seams_between(block.pattern.pieces);
  block.log = steps(targets, upper, lower, block.pattern.pieces[0], block.pattern.pieces[1]);
  block.ease = ease_as_drawn(ease, lower.drop);
  block.adjustments = settlement.adjustments();
  return block;
}

}  // namespace blockwright
