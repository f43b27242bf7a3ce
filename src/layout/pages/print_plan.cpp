#include "blockwright/layout/print_plan.hpp"

#include "drawing.hpp"
#include "pages.hpp"

#include <algorithm>

namespace blockwright {

std::string_view cut_style_name(CutStyle cut) {
  constexpr std::string_view names[] = {"toile", "card", "net", "garment"};
  return names[static_cast<std::size_t>(cut)];
}

Sheet pages_in_one(const PrintPlan& plan) {
  Sheet all;
  for (const Page& page : plan.pages) {
    all.width = std::max(all.width, page.width);
    all.height += page.height;
  }
  double top = all.height;
  for (const Page& page : plan.pages) {
    top -= page.height;
    add(all, shifted(page.furniture, {0.0, top}));
  }
  return all;
}

PrintPlan tile(const Layout& layout, TextFonts& fonts) {
  const Tiling tiling = choose_tiling(layout);
  PrintPlan plan{plan_title(layout), drawn(layout, borders_of(tiling), fonts),
                 map_pages(tiling, layout, fonts)};
  for (Page& page : tile_pages(tiling, plan.sheet, layout, fonts)) {
    plan.pages.push_back(std::move(page));
  }
  return plan;
}

}  // namespace blockwright
