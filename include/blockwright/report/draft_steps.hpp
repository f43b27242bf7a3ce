#pragma once

#include "blockwright/base/length.hpp"
#include "blockwright/base/wording.hpp"
#include "blockwright/text/units.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A point of the draft, for a person with pencil, ruler and compass.
struct DraftInstruction {
  std::string piece, point;
  Length out, up;  ///< from the piece's centre waist
  Wording rule;    ///< how it is found
  std::string closed_by;
};

/// Numbered instructions. `whose`: "Ondine Marsh, 2026-03-14".
std::string draft_steps_text(const std::string& whose, Unit unit,
                             const std::vector<DraftInstruction>& steps);

}  // namespace blockwright
