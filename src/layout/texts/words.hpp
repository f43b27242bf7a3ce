#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The words on the paper, in one place.

/// "side_neck_point" -> "side neck point".
std::string plain_name(std::string_view name);
/// "front" -> "Front".
std::string title_of(std::string_view name);
/// "cut 1 on the fold", "cut 2, a pair".
std::string cut_instruction(const Piece& piece);
/// What the cut line adds on this piece: "seam allowance 2 cm at shoulder, side; none at ..."
std::string allowance_text(const Piece& piece, const PrintOptions& options, Unit unit);
/// The same for the whole pattern; of a toile without naming edges.
std::string allowance_text(const Layout& layout);
/// "a, b and c".
std::string listed(const std::vector<std::string>& items);

}  // namespace blockwright
