#include "blockwright/fit/order.hpp"

#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <algorithm>

namespace blockwright {

std::vector<OrderedCorrection> order_corrections(const std::vector<Correction>& corrections) {
  std::vector<OrderedCorrection> order;
  for (std::size_t i = 0; i < corrections.size(); ++i) {
    if (corrections[i].withdrawn) continue;
    const FittingRow& row = fitting_row(row_of(corrections[i]).row);
    order.push_back({i, row.row, row.stage, {}, {row.voids.begin(), row.voids.end()}});
  }
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.stage < b.stage; });
  for (OrderedCorrection& one : order) {
    for (const OrderedCorrection& other : order) {
      const bool is_void =
          std::find(one.look_at.begin(), one.look_at.end(), other.row) != one.look_at.end();
      if (is_void && other.correction != one.correction) one.voids.push_back(other.correction);
    }
  }
  return order;
}

}  // namespace blockwright
