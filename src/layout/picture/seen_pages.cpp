#include "seen_pages.hpp"

#include "blockwright/base/error.hpp"
#include "drawing.hpp"
#include "page_size.hpp"
#include "seen_grid.hpp"

#include <utility>

namespace blockwright {
namespace {

// In mm.
constexpr double kSeenTitle = 4.2, kSeenSubtitle = 3.2, kSeenHeading = 3.8;
constexpr double kSeenHead = 16.0, kUnderHeading = 6.0;

/// Pages one after another, each filled from the top.
class SeenPages {
 public:
  SeenPages(const PageHeads& heads, const PrintOptions& options, TextFonts& fonts)
      : heads_(heads), options_(options), fonts_(fonts) {
    begin_page();
  }

  void pour(const std::vector<Paragraph>& words) {
    TextFlow flow(words, 1.0);
    while (!flow.done()) {
      TextDrawing drawing(sheet(), fonts_);
      rest_.top -= flow.pour(drawing, rest_) + kSeenGap;
      if (!flow.done()) begin_page();
    }
  }

  void add(SeenFigures seen) {
    if (seen.empty()) return;
    const SeenGrid grid = seen_on_page(seen, rest_.width());
    for (std::size_t i = 0; i < seen.size(); i += grid.columns) {
      const SeenFigures row = seen.subspan(i, std::min(grid.columns, seen.size() - i));
      const double heading = i == 0 ? kUnderHeading : 0.0;
      const double high = height_of(row_heights(row, grid, fonts_)) + heading;
      if (high > rest_.height() && !is_empty_) begin_page();
      if (high > rest_.height()) refuse();
      TextDrawing drawing(sheet(), fonts_);
      if (i == 0) line("What was seen", rest_.top - kSeenHeading, kSeenHeading);
      draw_seen(drawing, row, grid, {rest_.left, rest_.top - heading});
      rest_.top -= high + kSeenGap;
      is_empty_ = false;
    }
  }

  std::vector<Page> taken() && { return std::move(pages_); }

 private:
  [[noreturn]] void refuse() const {
    throw UsageError({Severity::Error, "paper.too_small", "--paper",
                      "a figure of what was seen has no room on '" + options_.paper.name + "'",
                      "choose a4, letter or a larger paper, upright"});
  }

  Sheet& sheet() { return pages_.back().furniture; }

  void begin_page() {
    Page& page = pages_.emplace_back();
    page.label = "seen";
    const PageSize size = upright(options_.paper);
    page.width = page.furniture.width = size.width;
    page.height = page.furniture.height = size.height;
    const double margin = options_.margin.mm();
    rest_ = {margin, margin, size.width - margin, size.height - margin};
    const std::size_t number = heads_.first + pages_.size() - 1;
    line(heads_.title, rest_.top - kSeenTitle, kSeenTitle);
    line(numbered_page(heads_.subtitle, number, heads_.of), rest_.top - kSeenTitle - 5.0,
         kSeenSubtitle);
    rest_.top -= kSeenHead;
    is_empty_ = true;
  }

  void line(const std::string& text, double baseline, double height) {
    TextDrawing(sheet(), fonts_)
        .text(shortened(fonts_, text, height, rest_.width()), {rest_.left, baseline}, height,
              TextAnchor::Start);
  }

  const PageHeads& heads_;
  const PrintOptions& options_;
  TextFonts& fonts_;
  std::vector<Page> pages_;
  Box rest_;
  bool is_empty_ = true;
};

}  // namespace

std::vector<Page> seen_pages(const std::vector<Paragraph>& words,
                             const std::vector<SeenOnPage>& seen, const PageHeads& heads,
                             const PrintOptions& options, TextFonts& fonts) {
  SeenPages pages(heads, options, fonts);
  pages.pour(words);
  pages.add(seen);
  return std::move(pages).taken();
}

}  // namespace blockwright
