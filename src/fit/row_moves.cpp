#include "blockwright/base/error.hpp"
#include "rows.hpp"

#include <algorithm>

namespace blockwright {
namespace {

std::vector<RowMoves> all_moves() {
  std::vector<RowMoves> all;
  for (const auto* part : {&kNeckRows, &kShoulderRows, &kArmholeRows, &kBustRows, &kBackRows,
                           &kLengthRows, &kWaistRows}) {
    all.insert(all.end(), part->begin(), part->end());
  }
  std::sort(all.begin(), all.end(),
            [](const RowMoves& a, const RowMoves& b) { return a.row < b.row; });
  return all;
}

}  // namespace

const std::vector<RowMoves>& row_moves() {
  static const std::vector<RowMoves> all = all_moves();
  return all;
}

const RowMoves& moves_of(int row) {
  const auto& all = row_moves();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const RowMoves& moves) { return moves.row == row; });
  require(found != all.end(), "the fitting catalogue has no such row");
  return *found;
}

}  // namespace blockwright
