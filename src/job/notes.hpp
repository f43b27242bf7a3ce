#pragma once

#include "block_run.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>

namespace blockwright {

/// The words on the paper: who, which session, which ease, what was estimated, the cautions.
SheetNotes notes_of(const BlockRun& run, const PrintOptions& print);

/// "Ondine Marsh, bodice block, toile, 2026-03-14".
std::string title_of(const BlockRun& run, const PrintOptions& print);

/// A length in the person's unit without its name: "36.5", or "14 3/8" for inches.
std::string in_unit(double mm, Unit unit);

/// "cm" or "in".
std::string unit_name(Unit unit);

/// A name of pieces and edges as words: "front.centre_front" as "front centre front".
std::string as_words(std::string name);

/// A measurement's key as words: "side neck to bust point".
std::string words_of(MeasurementName name);

/// The value of a measurement with its unit: "92.5 cm", "22.5 degrees".
std::string value_text(MeasurementName name, double value, Unit unit);

}  // namespace blockwright
