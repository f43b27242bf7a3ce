#include "blockwright/layout/tape_sheet.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "form_parts.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr double kFootRoom = 6.0;

/// The parts of the form on pages of one size, from the top down.
class FormPages {
 public:
  FormPages(const TapeSheet& form, const PrintOptions& options, TextFonts& fonts)
      : form_(form), options_(options), fonts_(fonts), height_(options.paper.height.mm()) {}

  void put(const FormPart& part) {
    if (pages_.empty() || part.height > room_) next_page();
    const double top = bottom() + kFootRoom + room_;
    add(pages_.back().furniture, shifted(part.drawing, {options_.margin.mm(), top}));
    room_ -= part.height + kBeforeGroup;
  }

  /// A roll is cut off behind all of them.
  void take_roll(const std::vector<FormPart>& parts) {
    height_ = 2.0 * options_.margin.mm() + kFootRoom;
    for (const FormPart& part : parts) height_ += part.height + kBeforeGroup;
  }

  [[nodiscard]] std::vector<Page> done() && {
    for (std::size_t i = 0; i < pages_.size(); ++i) {
      const FormFoot foot{"Page " + std::to_string(i + 1) + " of " + std::to_string(pages_.size()),
                          form_.client, form_.foot, form_.client.empty() && i > 0};
      add(pages_[i].furniture,
          shifted(form_foot(foot, fonts_).drawing, {options_.margin.mm(), bottom()}));
    }
    return std::move(pages_);
  }

 private:
  [[nodiscard]] double bottom() const { return options_.margin.mm(); }

  void next_page() {
    Page page;
    page.label = std::to_string(pages_.size() + 1);
    page.width = page.furniture.width = options_.paper.width.mm();
    page.height = page.furniture.height = height_;
    pages_.push_back(std::move(page));
    room_ = height_ - 2.0 * bottom() - kFootRoom;
  }

  const TapeSheet& form_;
  const PrintOptions& options_;
  TextFonts& fonts_;
  double height_;
  double room_ = 0.0;
  std::vector<Page> pages_;
};

void require_room(const PrintOptions& options, const std::vector<FormPart>& parts) {
  double height = 0.0;
  for (const FormPart& part : parts) height = std::max(height, part.height);
  const double rim = 2.0 * options.margin.mm();
  const double wide = kFormWidth + rim, high = height + kFootRoom + rim;
  const Paper& paper = options.paper;
  if (paper.width.mm() >= wide && (paper.is_roll() || paper.height.mm() >= high)) return;
  throw UsageError({Severity::Error, "paper.too_small", "--paper",
                    "the form needs " + fixed(wide, 0) + " x " + fixed(high, 0) + " mm; '" +
                        paper.name + "' is smaller",
                    "choose a4, letter or a larger paper, upright"});
}

}  // namespace

PrintPlan tape_sheet(const TapeSheet& form, const PrintOptions& options, TextFonts& fonts) {
  std::vector<FormPart> parts = {form_head(form, fonts)};
  if (!form.points.empty()) parts.push_back(form_points(form.points, fonts));
  for (const TapeSheetGroup& group : form.groups) parts.push_back(form_group(group, fonts));
  require_room(options, parts);
  FormPages pages(form, options, fonts);
  if (options.paper.is_roll()) pages.take_roll(parts);
  for (const FormPart& part : parts) pages.put(part);
  return {form.client.empty() ? "Tape session" : "Tape session, " + form.client,
          {},
          std::move(pages).done()};
}

}  // namespace blockwright
