#pragma once

#include "block_run.hpp"
#include "blockwright/report/fitting_report.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// Whether a newer session than that of the fitting already has what a correction asked for.
bool told_by_new_tape(const Client& client, const Session& session,
                      const NumberedCorrection& correction);

/// What both sessions took of the measurement, where the newer one already has what the correction
/// asked for: "the session of 2026-09-20 took ... where that of 2026-03-14 took ...".
std::optional<std::string> tapes_of(const Client& client, const Session& session, Unit unit,
                                    const NumberedCorrection& correction);

/// Warns of corrections that a newer tape session already explains: the measurement that the
/// correction called into doubt has moved since, by half to one and a half times what the
/// correction asked of it. They are applied still, unless the file says to drop them; the maker
/// decides (code "fit.explained").
Problems told_by_new_tape(const BlockRun& run);

/// The measurement that an applied correction calls into doubt, and the value that would have made
/// it unnecessary, found by drafting anew; nothing where its row names no measurement. Requires:
/// effect is one of run.fitted.effects. Cost: about ten drafts.
std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect);

}  // namespace blockwright
