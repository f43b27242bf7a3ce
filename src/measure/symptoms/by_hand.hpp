#pragma once

#include "said_words.hpp"

namespace blockwright {

/// What hands do with cloth, told from what cloth does to the body, by a word that is put behind
/// it: "I can pinch 2 cm" is "pinch out", cloth to spare; "it pinches" stays, and is tight. "I can
/// pull it away" is pinched out, too, and "I keep pulling it down" is "tug down": it rides up.
std::vector<SaidWord> with_hands_told(const std::vector<SaidWord>& words);

}  // namespace blockwright
