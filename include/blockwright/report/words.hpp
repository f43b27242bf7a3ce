#pragma once

#include "blockwright/draft/draft.hpp"
#include "blockwright/report/report.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// "Ondine Marsh, bodice block, toile, 2026-03-14".
std::string title_of(const Report& report);

/// A measurement's key as words: "side neck to bust point".
std::string words_of(MeasurementName name);
/// A measurement's value with its unit: "92.5 cm", "22.5°".
std::string value_text(Measure value, Unit unit);
/// "lower front neck 1.0 cm", "take in side 1/2 in (per seam), left side".
std::string correction_text(const Correction& correction, Unit unit);
/// " 3. lower front neck 1.0 cm (2026-03-21, toile 1)".
std::string numbered_text(const NumberedCorrection& correction, Unit unit);
/// Under the heading "What to look at"; empty without problems.
std::string problem_list(const Problems& problems);

/// The draft as numbered instructions for pencil, ruler and compass. `whose`: "Ondine Marsh,
/// 2026-03-14".
std::string draft_steps_text(const std::string& whose, Unit unit, const DraftLog& log);

/// Words for the paper, a line each.
std::vector<std::string> ease_lines(const Report& report);
/// Measurements that were not taped, with their doubt.
std::vector<std::string> estimated_lines(const Report& report);
/// "version 2, toile 1 of 2026-03-21"; empty without corrections.
std::string version_line(const Report& report);
/// The style's name, its steps, and what each of them asks of the sewer.
std::vector<std::string> made_lines(const Report& report);
/// What the checks warn of, and what holds for every toile.
std::vector<std::string> caution_lines(const Report& report);

}  // namespace blockwright
