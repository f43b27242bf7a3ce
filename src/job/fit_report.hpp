#pragma once

#include "block_run.hpp"

#include <string>

namespace blockwright {

/// The corrections in the order of work: what each changed, predicted against got, which judgements
/// it makes void, which measurement it calls into doubt; then what to look at.
std::string fit_text(const BlockRun& run);
/// The same as JSON (docs/formats.md).
std::string fit_json(const BlockRun& run);

/// "lower front neck 1.0 cm": one correction in words.
std::string correction_text(const Correction& correction, Unit unit);

}  // namespace blockwright
