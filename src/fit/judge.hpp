#pragma once

#include "blockwright/fit/apply.hpp"
#include "halves.hpp"

namespace blockwright {

/// Edges of the two sides that differ by no more meet at the centre, in mm.
inline constexpr double kMeetsAtCentre = 0.1;

/// A half before something was done to it, and after it.
struct Redrawn {
  const HalfBlock& before;
  const HalfBlock& after;
};

/// Throws InputError for what cannot be cut after a row: see apply_rows().
void require_possible(const Redrawn& half);

/// Warnings about the half as a whole against the block: darts grown too wide ("fit.limit"), curves
/// and corners no longer fair ("fit.curve").
Problems judge_half(const Redrawn& half);

/// Warnings where the two sides of the body no longer meet at the centre ("fit.seam").
Problems judge_centres(const Halves& halves);

/// What corrections say together: amounts over the catalogue's ("fit.limit"), judgements that void
/// each other ("fit.void"), faults with another cause ("fit.chain"), amounts that add up on one
/// line or dart ("fit.same_line"). `shoulder` is the shoulder's length in mm, for slopes.
Problems judge_together(const std::vector<Effect>& effects, double shoulder);

/// "waist girth" for waist_girth.
std::string tape_words(MeasurementName name);

/// "row 27, fuller bust".
std::string words_of(const Effect& effect);

}  // namespace blockwright
