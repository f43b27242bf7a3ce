#pragma once

#include "blockwright/layout/print_plan.hpp"

#include <future>
#include <iosfwd>
#include <string>
#include <utility>

namespace blockwright {

/// Writes the sheet as one SVG 1.1 drawing: mm size, viewBox in mm, y downwards, one group per
/// piece and layer, ids and classes that say what each path is, live text in the first font. No
/// dates; the same sheet gives the same bytes.
void write_svg(std::ostream& out, const Sheet& sheet, const std::string& title,
               const TextFonts& fonts);

/// Writes the pages as one PDF 1.7: layers as optional-content groups, drawn once and shared by all
/// pages, text embedded and searchable, print dialog preset to no scaling. No dates; the same plan
/// gives the same bytes.
void write_pdf(std::ostream& out, const PrintPlan& plan, TextFonts& fonts);

/// What is made ready in the background, awaited where this ends: the program must not come to its
/// end meanwhile.
class [[nodiscard]] Preparation {
 public:
  Preparation() = default;
  explicit Preparation(std::shared_future<void> ready) : ready_(std::move(ready)) {}
  Preparation(Preparation&&) = default;
  Preparation& operator=(Preparation&&) = delete;
  Preparation(const Preparation&) = delete;
  Preparation& operator=(const Preparation&) = delete;
  ~Preparation() {
    if (ready_.valid()) ready_.wait();
  }

 private:
  std::shared_future<void> ready_;
};

/// Makes ready what write_pdf() needs, while other work is done. Throws nothing: what goes wrong is
/// said by write_pdf().
Preparation prepare_pdf();

/// Writes the pieces as pattern JSON, format "blockwright-pattern-1" (docs/formats.md): stitch
/// lines in mm, y up, numbers in full precision.
void write_pattern_json(std::ostream& out, const Pattern& pattern);

}  // namespace blockwright
