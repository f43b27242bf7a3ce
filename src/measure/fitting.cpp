#include "blockwright/measure/fitting.hpp"

#include "blockwright/measure/client.hpp"

#include <algorithm>

namespace blockwright {

std::string_view amount_word(AmountAs as) {
  switch (as) {
    case AmountAs::Length:
      return "length";
    case AmountAs::TuckDepth:
      return "tuck_depth";
    case AmountAs::PerSeam:
      return "per_seam";
    case AmountAs::PerHalf:
      return "per_half";
    case AmountAs::WholeGirth:
      return "whole_girth";
  }
  return "length";
}

std::optional<AmountAs> amount_named(std::string_view word) {
  const auto* const found = std::ranges::find(kAmountWays, word, amount_word);
  if (found == kAmountWays.end()) return std::nullopt;
  return *found;
}

std::string_view amount_meaning(AmountAs as) {
  switch (as) {
    case AmountAs::Length:
      return "how far it is to move on the body";
    case AmountAs::TuckDepth:
      return "depth of the pinned tuck, which takes out twice as much";
    case AmountAs::PerSeam:
      return "from each of the two pieces at one seam";
    case AmountAs::PerHalf:
      return "cloth on one half of the body";
    case AmountAs::WholeGirth:
      return "cloth on the whole body";
  }
  return {};
}

std::string_view side_word(BodySide side) {
  switch (side) {
    case BodySide::Both:
      return "both";
    case BodySide::Left:
      return "left";
    case BodySide::Right:
      return "right";
  }
  return "both";
}

std::optional<BodySide> side_named(std::string_view word) {
  const auto* const found = std::ranges::find(kBodySides, word, side_word);
  if (found == kBodySides.end()) return std::nullopt;
  return *found;
}

}  // namespace blockwright
