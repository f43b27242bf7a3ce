#pragma once

#include "terms.hpp"

namespace blockwright {

/// "Longer than the back" without the back: the first thing named is what is judged. What is said
/// of the body ("breasts lower than the darts") is turned round: the darts are high.
void judge_by_first(Terms& terms);

/// "Not as long as the back" is short.
void mend_not_as(Terms& terms);

/// "Not long enough" is short, and "there isn't any room" is tight.
void mend_not_enough(Terms& terms);
/// "Long enough", "as long as the front", where it is not wished for.
bool is_enough(Terms terms);

/// "Needs a longer dart", "shorter darts please": what is wanted mends what is seen.
void mend_wishes(Terms& terms);

}  // namespace blockwright
