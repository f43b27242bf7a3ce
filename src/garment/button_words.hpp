#pragma once

#include "blockwright/base/wording.hpp"
#include "blockwright/pattern/pattern.hpp"

namespace blockwright {

/// True if the fronts' facings are cut on, not pieces of their own.
bool has_cut_on_facing(const Pattern& pattern, const Opening& opening);

/// What a buttoned opening takes, and how it is sewn: facings before the edges that they meet,
/// buttons last. Requires: it is closed with buttons.
Wording buttons_line(const Opening& opening);
Wording set_buttons(const Opening& opening);
/// Of facings that are cut on. The interfacing reaches as far up and down as they do.
Wording facing_strips(const Pattern& pattern, const Opening& opening);
Wording fold_facings();

}  // namespace blockwright
