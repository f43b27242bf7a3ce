#pragma once

#include "blockwright/base/wording.hpp"
#include "blockwright/pattern/pattern.hpp"

namespace blockwright {

/// What a buttoned opening takes, and how it is sewn: facings before the edges that they meet,
/// buttons last. Requires: it is closed with buttons.
Wording buttons_line(const Opening& opening);
Wording fold_facings(const Opening& opening);
Wording set_buttons(const Opening& opening);

}  // namespace blockwright
