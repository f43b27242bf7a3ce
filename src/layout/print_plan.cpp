#include "blockwright/layout/print_plan.hpp"

#include "blockwright/base/error.hpp"
#include "map_page.hpp"
#include "notes_text.hpp"
#include "tile_page.hpp"
#include "tiling.hpp"

namespace blockwright {

std::string_view cut_style_name(CutStyle cut) {
  switch (cut) {
    case CutStyle::Toile:
      return "toile";
    case CutStyle::Card:
      return "card";
    case CutStyle::Net:
      return "net";
  }
  require(false, "unknown cut style");
  return {};
}

PrintPlan tile(const Sheet& sheet, const PrintOptions& options, const SheetNotes& notes,
               const Pattern& pattern) {
  const Tiling tiling = choose_tiling(Ink(sheet), options);
  PrintPlan plan;
  plan.title = plan_title(options, notes);
  plan.sheet = sheet;
  plan.pages = map_pages(tiling, sheet, pattern, options, notes);
  for (const Tile& tile : tiling.tiles) {
    plan.pages.push_back(tile_page(tiling, tile, sheet, options, notes));
  }
  return plan;
}

}  // namespace blockwright
