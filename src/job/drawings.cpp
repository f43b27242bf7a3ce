#include "drawings.hpp"

#include "blockwright/write/writers.hpp"

#include <sstream>
#include <utility>

namespace blockwright {
namespace {

bool on_one_page(const Paper& paper) { return paper.is_roll() || paper.name == "a0"; }

}  // namespace

void add_drawings(const std::string& stem, const Wishes& wishes, const SheetNotes& notes,
                  const std::string& title, const Pattern& pattern, const Sheet& sheet,
                  std::vector<OutputFile>& outputs) {
  if (wishes.svg) {
    std::ostringstream svg;
    write_svg(svg, sheet, title);
    outputs.push_back({stem + ".svg", std::move(svg).str(), 0});
  }
  if (wishes.pdf) {
    PrintPlan plan = on_one_page(wishes.print.paper) ? one_page(sheet, wishes.print, notes, pattern)
                                                     : tile(sheet, wishes.print, notes, pattern);
    plan.title = title;
    std::ostringstream pdf;
    write_pdf(pdf, plan);
    outputs.push_back({stem + ".pdf", std::move(pdf).str(), static_cast<int>(plan.pages.size())});
  }
}

}  // namespace blockwright
