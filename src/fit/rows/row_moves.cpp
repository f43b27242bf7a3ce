#include "blockwright/base/error.hpp"
#include "rows.hpp"

namespace blockwright {

const RowMoves& moves_of(CorrectionRow row) {
  for (const auto& part : {kNeckMoves, kShoulderMoves, kArmholeMoves, kBustMoves, kBackMoves,
                           kLengthMoves, kWaistMoves}) {
    const auto found = std::ranges::find(part, row, &RowMoves::row);
    if (found != part.end()) return *found;
  }
  require(false, "the fitting catalogue has no such row");
  return kNeckMoves.front();
}

}  // namespace blockwright
