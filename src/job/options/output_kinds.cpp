#include "drawings.hpp"

#include <array>

namespace blockwright {
namespace {

int write_sheet(std::ostream& out, const DrawnOutput& drawing) {
  write_svg(out, sheet_of(drawing.layout, drawing.fonts), drawing.title, drawing.fonts);
  return 0;
}

bool on_one_page(const Paper& paper) { return paper.is_roll() || paper.name == "a0"; }

int write_pages(std::ostream& out, const DrawnOutput& drawing) {
  PrintPlan plan =
      (on_one_page(drawing.layout.options.paper) ? one_page : tile)(drawing.layout, drawing.fonts);
  plan.title = drawing.title;
  write_pdf(out, plan, drawing.fonts);
  return static_cast<int>(plan.pages.size());
}

int write_numbers(std::ostream& out, const DrawnOutput& drawing) {
  write_pattern_json(out, drawing.pattern);
  return 0;
}

constexpr std::array<OutputRow, 3> kOutputKinds = {{
    {OutputKind::Svg, "svg", "one sheet", OutputOf::Sheet, write_sheet},
    {OutputKind::Pdf, "pdf", "pages to print", OutputOf::Sheet, write_pages, prepare_pdf},
    {OutputKind::Json, "json", "stitch lines as numbers", OutputOf::Pattern, write_numbers},
}};

}  // namespace

std::span<const OutputRow> output_kinds() { return kOutputKinds; }

}  // namespace blockwright
