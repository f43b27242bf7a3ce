#pragma once

#include "blockwright/pattern/pattern.hpp"

#include <vector>

namespace blockwright_fuzz {

/// Blocks drafted once, of people of many shapes: small and large, flat and full, one back waist
/// dart and two.
const std::vector<blockwright::Pattern>& ready_blocks();

/// Ends the program unless every piece is whole: closed, not crossing itself, its darts in order.
void must_be_whole(const blockwright::Pattern& pattern, const char* when);

/// Ends the program unless the pieces are whole, and their seams and notches meet.
void must_pass_checks(const blockwright::Pattern& pattern, const char* when);

/// Ends the program where an edge runs across a dart.
void must_have_whole_darts(const blockwright::Pattern& pattern, const char* when);

}  // namespace blockwright_fuzz
