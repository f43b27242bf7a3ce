#include "blockwright/measure/correction_table.hpp"

#include "blockwright/base/error.hpp"

namespace blockwright {

const FittingRow& fitting_row(CorrectionRow row) {
  const int number = number_of(row);
  require(number >= 1 && number <= static_cast<int>(kCorrectionCount),
          "the fitting catalogue has no such row");
  return kCorrections[static_cast<std::size_t>(number) - 1];
}

std::string_view row_name(CorrectionRow row, int sign) {
  return sign < 0 ? fitting_row(row).reverse_name : fitting_row(row).name;
}

std::string_view stage_name(int stage) {
  constexpr std::string_view names[] = {
      "set-up",  "lengths and balance",       "shoulder and neck base", "bust and blade", "widths",
      "armhole", "neck edge and style edges", "waist seam and hem",     "one side alone"};
  require(stage >= 0 && stage <= kOneSideStage, "no such stage");
  return names[stage];
}

double redraft_limit(MeasurementName name) { return by_kind(info(name).kind, 25.0, 13.0, 4.0); }

}  // namespace blockwright
