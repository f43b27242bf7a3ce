#pragma once

#include "block_run.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// Two fitted blocks, the older first.
struct Comparison {
  const BlockRun& before;
  const BlockRun& after;
  Alignment alignment = Alignment::Waist;
};

/// "Ondine Marsh, session 2026-03-14, toile 2".
std::string version_name(const BlockRun& run);
std::string title_of(const Comparison& comparison);

/// What moved: measurements, lengths, darts and named points, in the person's unit.
std::string compare_text(const Comparison& comparison, const std::vector<std::string>& files);
/// The same in mm and degrees, rounded to 0.0001 (docs/formats.md).
std::string compare_json(const Comparison& comparison, const std::vector<std::string>& files);

}  // namespace blockwright
