#pragma once

#include "blockwright/layout/sheet.hpp"
#include "pdf_fonts.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace blockwright::writing {

/// Writes a PDF content stream. All lengths are in the user space that scale() sets up:
/// millimetres, y up. Coordinates are written to 0.0001 mm. Operators: ISO 32000-1:2008, annex A.
class PdfContent {
 public:
  explicit PdfContent(PdfFonts& fonts) : fonts_(fonts) {}

  void save();
  void restore();
  void scale(double factor);
  void shift(Vec by);
  /// Shows nothing outside the box until restore().
  void clip(const Box& box);
  /// Draws the layer of that number, named in the resources, under its optional-content group.
  void draw_layer(std::string_view number);
  /// Joins are mitred, ends are cut off square: a corner of a cut line is where the lines meet.
  void stroke(const Stroke& stroke);
  void text(const SheetText& text);

  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  void put(double mm);
  void put(Point p);
  void put(std::string_view operation);
  void use(const LineStyle& style);
  void path(const Path& path);
  void run(const PdfRun& run, double height);

  PdfFonts& fonts_;
  std::string text_;
  std::optional<LineStyle> style_;  ///< as the stream has it now; unknown at first
};

/// A number of user space, for dictionaries that go with a content stream.
std::string pdf_number(double value);

}  // namespace blockwright::writing
