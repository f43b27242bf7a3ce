#include "block_pass.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "run_report.hpp"

#include <algorithm>
#include <set>

namespace blockwright {
namespace {

const Effect* effect_of(const BlockRun& run, std::size_t correction) {
  for (const Effect& effect : run.fitted.effects) {
    const auto& all = effect.corrections;
    if (std::find(all.begin(), all.end(), correction) != all.end()) return &effect;
  }
  return nullptr;
}

FittingLine line_of(const BlockRun& run, const OrderedCorrection& ordered) {
  FittingLine line{run.corrections[ordered.correction], ordered, {}, 0, {}, {}};
  for (const std::size_t other : ordered.voids) line.voids.push_back(run.corrections[other]);
  const Effect* effect = effect_of(run, ordered.correction);
  if (effect == nullptr) return line;
  line.change = change_of(run, *effect);
  line.doubt = doubt_of(run, *effect);
  const std::size_t first = effect->corrections.front();
  if (first != ordered.correction) line.counted_with = run.corrections[first].number;
  return line;
}

std::vector<std::string> next_toile(const std::vector<FittingLine>& lines) {
  std::set<CorrectionRow> rows;
  for (const FittingLine& line : lines) {
    rows.insert(line.order.look_at.begin(), line.order.look_at.end());
  }
  std::vector<std::string> texts;
  texts.reserve(rows.size());
  for (const CorrectionRow row : rows) {
    texts.push_back(std::string(fitting_row(row).name) + ": " + std::string(fitting_row(row).seen));
  }
  return texts;
}

}  // namespace

FittingReport fitting_report_of(const BlockRun& run) {
  FittingReport report{
      run.client.name, run.session.date, run.unit, {}, {}, {}, worded(run.problems, run.unit)};
  std::vector<Correction> corrections;
  for (const NumberedCorrection& one : run.corrections) corrections.push_back(one.correction);
  for (const OrderedCorrection& ordered : order_corrections(corrections)) {
    report.lines.push_back(line_of(run, ordered));
  }
  report.next_toile = next_toile(report.lines);
  for (const NumberedCorrection& one : numbered_corrections(run.client)) {
    if (one.correction.withdrawn) report.withdrawn.push_back(one);
  }
  return report;
}

}  // namespace blockwright
