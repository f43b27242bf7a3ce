#include "blockwright/measure/fitting.hpp"

#include <algorithm>

namespace blockwright {
namespace {

struct Way {
  std::string_view word, meaning;
};
// By AmountAs.
constexpr std::array<Way, kAmountWays.size()> kWays{
    {{"length", "how far it is to move on the body"},
     {"tuck_depth", "depth of the pinned tuck, which takes out twice as much"},
     {"per_seam", "from each of the two pieces at one seam"},
     {"per_half", "cloth on one half of the body"},
     {"whole_girth", "cloth on the whole body"}}};
// By BodySide.
constexpr std::array<std::string_view, kBodySides.size()> kSideWords{"both", "left", "right"};

template <class All>
auto with_word(const All& all, std::string_view word, auto word_of) {
  const auto found = std::ranges::find(all, word, word_of);
  return found == all.end() ? std::nullopt : std::optional(*found);
}

}  // namespace

std::string_view amount_word(AmountAs as) { return kWays[static_cast<std::size_t>(as)].word; }
std::string_view amount_meaning(AmountAs as) { return kWays[static_cast<std::size_t>(as)].meaning; }
std::optional<AmountAs> amount_named(std::string_view word) {
  return with_word(kAmountWays, word, amount_word);
}

std::string_view side_word(BodySide side) { return kSideWords[static_cast<std::size_t>(side)]; }
std::optional<BodySide> side_named(std::string_view word) {
  return with_word(kBodySides, word, side_word);
}

}  // namespace blockwright
