#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <string>

namespace blockwright {

/// Of a page of a picture, in mm.
struct PageSize {
  double width, height;
};

/// The paper as it is named; of a roll a piece in the proportions of an A4.
inline PageSize upright(const Paper& paper) {
  constexpr double proportion = 1.4142;  // height over width
  const double width = paper.width.mm();
  return {width, paper.is_roll() ? proportion * width : paper.height.mm()};
}

/// "Fitting, page 2 of 3".
inline std::string numbered_page(const std::string& what, std::size_t number, std::size_t of) {
  return what + ", page " + std::to_string(number) + " of " + std::to_string(of);
}

}  // namespace blockwright
