#pragma once

#include "blockwright/layout/cut_line.hpp"
#include "blockwright/layout/print_plan.hpp"

namespace blockwright {

/// The allowance of an edge: what the style says of it on a garment, none on a card or net, else
/// the option's at seams and openings. A toile's neckline, armhole and waist are judged on the body
/// and stay bare.
Length allowance_at(const Edge& edge, const PrintOptions& options);

/// How the allowances of two edges of a garment end at their corner. What is sewn or pressed last
/// gives way to nothing: a hem is turned up over seams that are pressed open, a seam is pressed
/// open before its ends are shut in or bound, panels are joined before anything crosses their seam.
/// Source: common practice, no source.
CornerCut corner_between(const EdgeFinish& before, const EdgeFinish& after);

/// The stitch line, on a garment led round the facings that are cut on.
Path outline_with_facings(const Piece& piece, const PrintOptions& options);

}  // namespace blockwright
