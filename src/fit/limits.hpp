#pragma once

#include "blockwright/base/problem.hpp"
#include "halves.hpp"
#include "rows.hpp"

namespace blockwright {

/// Edges of the two sides that differ by no more meet at the centre, in mm.
inline constexpr double kMeetsAtCentre = 0.1;

/// Throws InputError for what cannot be cut: see apply_rows(). `before` is the half before the row.
void require_possible(const HalfBlock& before, const HalfBlock& after);

/// Warnings about the half as a whole against the block: darts grown too wide ("fit.limit"), curves
/// and corners no longer fair ("fit.curve").
Problems judge_half(const HalfBlock& block, const HalfBlock& after);

/// Warnings where the two sides of the body no longer meet at the centre ("fit.seam").
Problems judge_centres(const Halves& halves);

}  // namespace blockwright
