#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A word in small letters, without what is at its end: "gaping" and "gapes" are one word.
struct SaidWord {
  std::string stem;
  std::string typed;
  bool after_pause = false;  ///< a comma, a bracket or the like stands before it
  bool after_is = false;     ///< "is right", of which "is" is passed over
  bool after_the = false;    ///< "the right", "my left"
};
/// The words of a text; "isn't" and its like as what they mean (other_forms()).
std::vector<SaidWord> said_words(std::string_view text);
/// "dont" of "Don't".
std::string letters_of(std::string_view typed);
/// The same without the articles, and with what hands do told (by_hand.hpp).
std::vector<SaidWord> plain_words(std::string_view text);

}  // namespace blockwright
