#include "blockwright/layout/print_plan.hpp"

#include "pages.hpp"

namespace blockwright {

std::string_view cut_style_name(CutStyle cut) {
  constexpr std::string_view names[] = {"toile", "card", "net", "garment"};
  return names[static_cast<std::size_t>(cut)];
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
