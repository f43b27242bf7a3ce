#pragma once

#include "blockwright/base/problem.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <vector>

namespace blockwright {

/// What corrections say together: amounts over the catalogue's ("fit.limit"), judgements that void
/// each other ("fit.void"), faults with another cause ("fit.chain"), amounts that add up on one
/// line or dart ("fit.same_line"). `shoulder` is the shoulder's length in mm, for slopes.
Problems judge_together(const std::vector<Effect>& effects, double shoulder);

/// "waist girth" for waist_girth.
std::string tape_words(MeasurementName name);

/// "row 27, fuller bust".
std::string words_of(const Effect& effect);

}  // namespace blockwright
