#pragma once

#include "blockwright/measure/body.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// One point of the draft: where it lies, by which rule, and what closed it.
struct DraftStep {
  std::string piece;  ///< "front" or "back"
  std::string point;  ///< trade name, e.g. "side neck point"
  Point at;           ///< mm from the piece's centre waist
  /// How it is found with ruler and compass, in words; "{0}", "{1}" ... stand for `lengths`, so
  /// that they can be told in the person's unit.
  std::string rule;
  std::vector<double> lengths;  ///< mm
  std::string closed_by;  ///< what fixes it: the measurements, and "rule: ..." for the draft's own
};

/// Every named point in the order of drawing.
using DraftLog = std::vector<DraftStep>;

/// A drafted block: the half front and the half back, with darts open, and what gave way.
struct DraftedBlock {
  Pattern pattern;
  /// The ease as drawn. Equal to the ease asked for, except for the side length, whose "ease" is
  /// the underarm drop that the armhole asked for (negative).
  Ease ease;
  /// What the bounds of the draft did to measurements, one entry for each bound that was met.
  Adjustments adjustments;
  /// The front neck that the two front lengths asked for, where no neck has it (judge_neck()).
  std::optional<OddNeck> odd_neck = {};
};

/// Drafts the front and back block from one consistent, complete body (see docs/method.md).
///
/// What was taped is first settled as a whole (settle_tape()).
///
/// Guarantees: 1. the finished pieces, darts closed as they are stitched, give back every
/// measurement that closes an unknown, plus its ease and its adjustment, within 0.01 mm; half
/// across front, half across back and half upper chest are settled together with the armhole's
/// width and the bust dart (their adjustments say by how much each moved), and what the person is
/// sure of does not move;
/// 2. side seams, shoulder seams and dart legs walk; 3. a small change of any measurement makes a
/// small change of every point of the outline.
/// Requires: a body from fill_in(). Never fails on one whose measurements lie within the limits of
/// the catalogue, with eases up to most_ease(): what contradicts is settled and told in
/// `adjustments`. Beyond these limits, which no client file passes, throws InputError
/// "draft.range" that names the measurement.
DraftedBlock draft_block(const Body& body, const Ease& ease);

/// How draft_block() drafts that block, point by point.
DraftLog draft_steps(const Body& body, const Ease& ease);

}  // namespace blockwright
