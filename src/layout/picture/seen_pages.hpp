#pragma once

#include "blockwright/layout/change_page.hpp"
#include "text_flow.hpp"

#include <vector>

namespace blockwright {

/// What stands above the words of each page.
struct PageHeads {
  std::string title, subtitle;
  std::size_t first = 2;  ///< number of the first of these pages
  std::size_t of = 0;     ///< how many there are, with those before
};

/// Words that had no room on the page before, and then every figure with its words and what mends
/// it; as many pages as that takes. Throws UsageError "paper.too_small" where one figure has no
/// room.
std::vector<Page> seen_pages(const std::vector<Paragraph>& words,
                             const std::vector<SeenOnPage>& seen, const PageHeads& heads,
                             const PrintOptions& options, TextFonts& fonts);

}  // namespace blockwright
