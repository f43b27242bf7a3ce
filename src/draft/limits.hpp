#pragma once

#include "blockwright/measure/body.hpp"
#include "blockwright/measure/ease.hpp"

namespace blockwright {

/// Throws InputError "draft.range" for the first measurement or ease that is beyond what a body or
/// a block can have.
void require_limits(const Body& body, const Ease& ease);

}  // namespace blockwright
