#pragma once

#include "block_pass.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "blockwright/report/fitting_report.hpp"
#include "blockwright/report/report.hpp"

#include <string>

namespace blockwright {

/// The run as its report has it: drafted; with corrections, fitted; with steps of a style, styled.
Report report_of(const BlockRun& run, CutStyle cut);

/// The words on the paper: who, which session, which ease, what was estimated, the cautions.
SheetNotes notes_of(const Report& report);

/// What a correction did, or several that were added up.
Change change_of(const BlockRun& run, const Effect& effect);

/// The measurement that an applied correction calls into doubt, and the value that would have made
/// it unnecessary, found by drafting anew; nothing where its row names no measurement. Requires:
/// effect is one of run.fitted.effects. Cost: about ten drafts.
std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect);

/// The corrections in the order of work.
FittingReport fitting_report_of(const BlockRun& run);
}  // namespace blockwright
