#pragma once

#include "block_pass.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <optional>
#include <string>

namespace blockwright {

/// What one change of the tape has of what corrections asked for.
struct TapeStep {
  const Session *since = nullptr, *until = nullptr;
  std::optional<Measure> was, is;  ///< as taped
  Measure has;
  bool as_taped = true;  ///< the block has as much of it as the tape
};

/// The session that the toile of a fitting was cut from: the newest before its day, or the first.
/// Null where the file has none so old.
const Session* session_of_fitting(const Client& client, const std::string& date);

/// Whether the block is drafted from a newer tape than the toile that the correction was seen on.
bool has_newer_tape(const BlockSource& source, const NumberedCorrection& numbered);

/// Whether the newer tape speaks of a measurement: an estimate is no news of the body. Both
/// shoulder slants say what the slope says.
bool speaks_of(const Session& session, MeasurementName name);

/// What the tape changed by from one session to another; `has` is 0.
TapeStep step_between(const Session& since, const Session& until, MeasurementName name);
/// mm or degrees; nothing where one of the two was not taped.
std::optional<double> taped_change(const TapeStep& step);

/// The measurement that the correction asks to change; nothing where the file says what becomes of
/// the correction whatever the tape is.
std::optional<DoubtedMeasurement> asked_of(const Correction& correction, const RowAmount& amount);
/// By how much, mm or degrees.
double asked_change(const DoubtedMeasurement& doubts, const RowAmount& amount);

}  // namespace blockwright
