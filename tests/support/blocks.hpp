#pragma once

#include "blockwright/check/check.hpp"
#include "blockwright/draft/draft.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A session drafted and checked.
struct CheckedBlock {
  Body body;
  Ease asked;
  DraftedBlock block;
  CheckReport report;
};

CheckedBlock checked_block(const Session& session, const Ease& ease = Ease::of_toile());

/// The block of one person of usual proportions.
Pattern ordinary_block();

/// Errors of a report, or whatever is wrong with a pattern, one a line; empty when all checks
/// passed.
std::string errors_of(const CheckReport& report);
std::string errors_of(const Pattern& pattern);

/// A length of the report by name. Requires: it is there.
double length_of(const CheckReport& report, const std::string& name);

/// The row of a measurement, or nothing.
const MeasureBack* row_of(const CheckReport& report, MeasurementName name);

/// The middle value.
double median_of(std::vector<double> values);

}  // namespace blockwright
