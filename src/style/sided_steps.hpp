#pragma once

#include "blockwright/style/style.hpp"

#include <functional>
#include <vector>

namespace blockwright {

/// The step as it is done on this pattern. Where a fitting has unfolded the piece that it names, it
/// is one step for each side: "front.shoulder" becomes "front_right.shoulder" and
/// "front_left.shoulder", and names of panels get the side behind them.
std::vector<StyleStep> steps_for_sides(const Pattern& pattern, const StyleStep& step);

/// Does a step on the piece that it names in the frame in which pieces are drafted: a mirror image
/// is mirrored, and back again with all that was made of it.
MovedDarts done_as_drafted(const Pattern& pattern, const StyleStep& step,
                           const std::function<MovedDarts(const Pattern&)>& done);

}  // namespace blockwright
