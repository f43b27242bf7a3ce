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
std::string_view cut_instruction(CutOn cut_on);
/// What the cut line adds on this piece: "seam allowance 2 cm at shoulder, side; none at ..."
std::string allowance_text(const Piece& piece, const PrintOptions& options, Unit unit);
/// The same without naming edges, for the whole pattern.
std::string allowance_text(const PrintOptions& options, Unit unit);
/// "a, b and c".
std::string listed(const std::vector<std::string>& items);

/// The allowance of an edge: none on a card or net, else the option's at seams and openings.
/// A toile's neckline, armhole and waist are judged on the body and stay bare.
Length allowance_at(const Edge& edge, const PrintOptions& options);

}  // namespace blockwright
