#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "line_sums.hpp"

#include <algorithm>

namespace blockwright {

std::vector<OrderedCorrection> order_corrections(const std::vector<Correction>& corrections) {
  std::vector<OrderedCorrection> order;
  for (std::size_t i = 0; i < corrections.size(); ++i) {
    if (corrections[i].withdrawn) continue;
    const FittingRow& row = fitting_row(row_of(corrections[i]).row);
    order.push_back({i, row.row, row.stage, {}, {row.voids.begin(), row.voids.end()}});
  }
  std::ranges::stable_sort(order, {}, &OrderedCorrection::stage);
  for (OrderedCorrection& one : order) {
    for (const OrderedCorrection& other : order) {
      const bool is_void =
          std::ranges::count(one.look_at, other.row) > 0 &&
          same_body(corrections[one.correction].side, corrections[other.correction].side);
      if (is_void && other.correction != one.correction) one.voids.push_back(other.correction);
    }
  }
  return order;
}

}  // namespace blockwright
