#pragma once

#include "blockwright/dart/opened.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// One half of the body: the half front and the half back that are sewn together.
struct HalfBlock {
  Opened front;
  Opened back;
};

/// What a row is asked to do: `by` in mm as the row counts it, with the row's sign; `place` as in
/// Correction, where one row serves several.
struct RowAsk {
  double by = 0.0;
  std::string_view place;
};

/// How near a predicted change is met.
enum class LawKind {
  Exact,  ///< a law of geometry: within 0.5 mm
  Ratio,  ///< a ratio found on a sample curve: within 30 % on nine of ten blocks
  Rough,  ///< a ratio that depends much on the curve: the median of blocks lies within 30 %
};

/// What a row says of a length: named as in Effect, its change in mm.
struct Law {
  std::string name;
  double change = 0.0;
  LawKind kind = LawKind::Exact;
};

using RowApply = void (*)(HalfBlock&, const RowAsk&);
using RowLaws = std::vector<Law> (*)(const HalfBlock& before, const RowAsk&);

/// What a row does. Rows that are another's reverse, or the same on one side, share its moves.
struct RowMoves {
  int row = 0;
  int same_as = 0;  ///< the row whose moves and limits it shares
  int times = 1;    ///< +1 or -1 of that row
  RowApply apply = nullptr;
  RowLaws laws = nullptr;
};

/// All 49, by number.
const std::vector<RowMoves>& row_moves();
const RowMoves& moves_of(int row);

// The rows by part of the body.
extern const std::vector<RowMoves> kNeckRows, kShoulderRows, kArmholeRows, kBustRows, kBackRows,
    kLengthRows, kWaistRows;

}  // namespace blockwright
