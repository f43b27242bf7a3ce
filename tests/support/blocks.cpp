#include "support/blocks.hpp"

#include "support/people.hpp"

#include <algorithm>
#include <stdexcept>

namespace blockwright {

CheckedBlock checked_block(const Session& session, const Ease& ease) {
  CheckedBlock checked;
  checked.body = fill_in(session);
  checked.asked = ease;
  checked.block = draft_block(checked.body, ease);
  checked.report = check_block(
      {checked.block.pattern, checked.body, checked.block.ease, checked.block.adjustments});
  return checked;
}

Pattern ordinary_block() { return checked_block(survey_people(1, 7).front()).block.pattern; }

std::string errors_of(const CheckReport& report) {
  std::string text;
  for (const Problem& problem : report.problems) {
    if (problem.severity == Severity::Error) text += to_text(problem) + "\n";
  }
  return text;
}

std::string errors_of(const Pattern& pattern) {
  std::string text;
  for (const Problem& problem : check_pattern(pattern)) text += to_text(problem) + "\n";
  return text;
}

double length_of(const CheckReport& report, const std::string& name) {
  for (const NamedLength& length : report.lengths) {
    if (length.name == name) return length.mm;
  }
  throw std::out_of_range("no such length: " + name);
}

const MeasureBack* row_of(const CheckReport& report, MeasurementName name) {
  for (const MeasureBack& row : report.measure_back) {
    if (row.name == name) return &row;
  }
  return nullptr;
}

double median_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values.at(values.size() / 2);
}

}  // namespace blockwright
