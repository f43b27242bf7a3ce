#include "pdf_content.hpp"

#include "blockwright/base/number_text.hpp"

#include <cmath>
#include <utility>
#include <variant>

namespace blockwright::writing {
namespace {

constexpr int kPdfDecimals = 4;     // of a millimetre: a thousandth of what the paper promises
constexpr int kFactorDecimals = 9;  // of scales, sines and cosines: 1e-6 mm at 1 m
constexpr double kTextThousandths = 1000.0;
// Below this a shift of a glyph, in em, is rounding: 4 nanometres in letters of 4 mm.
constexpr double kNoShift = 1e-6;

/// The array of a TJ operator: codes, and between them how far to step back, in thousandths of an
/// em.
class ShowArray {
 public:
  void move_on(double em) { pending_ -= em; }
  void show(unsigned code) {
    flush();
    codes_ += pdf_hex_16(code);
  }
  /// The array so far; a new one begins where it ends.
  std::string take() {
    flush();
    close_codes();
    return '[' + std::exchange(text_, {}) + ']';
  }

 private:
  void flush() {
    if (std::abs(pending_) < kNoShift) return;
    close_codes();
    text_ += trimmed(pending_ * kTextThousandths, 3);
    pending_ = 0.0;
  }
  void close_codes() {
    if (!codes_.empty()) text_ += '<' + codes_ + '>';
    codes_.clear();
  }
  std::string text_;
  std::string codes_;
  double pending_ = 0.0;
};

}  // namespace

std::string pdf_number(double value) { return trimmed(value, kPdfDecimals); }

void PdfContent::put(double mm) { text_ += pdf_number(mm) + ' '; }

void PdfContent::put(Point p) {
  put(p.x);
  put(p.y);
}

void PdfContent::put(std::string_view operation) {
  text_ += operation;
  text_ += '\n';
}

void PdfContent::save() {
  put("q");
  style_.reset();
}

void PdfContent::restore() {
  put("Q");
  style_.reset();
}

void PdfContent::scale(double factor) {
  const std::string text = trimmed(factor, kFactorDecimals);
  put(text + " 0 0 " + text + " 0 0 cm");
}

void PdfContent::shift(Vec by) {
  put("1 0 0 1 " + pdf_number(by.x) + ' ' + pdf_number(by.y) + " cm");
}

void PdfContent::clip(const Box& box) {
  put(Point{box.left, box.bottom});
  put(Point{box.width(), box.height()});
  put("re W n");
}

void PdfContent::draw_layer(std::string_view number) {
  text_.append("/OC /L").append(number).append(" BDC /S").append(number).append(" Do EMC\n");
}

void PdfContent::use(const LineStyle& style) {
  if (style_ == style) return;
  put(style.width);
  std::string dashes;
  for (const double dash : style.dashes) dashes += pdf_number(dash) + ' ';
  put("w [" + dashes + "] 0 d " + pdf_number(style.grey) + " G");
  style_ = style;
}

void PdfContent::path(const Path& path) {
  put(path.start());
  put("m");
  for (const Curve& curve : path.curves()) {
    if (const auto* line = std::get_if<Segment>(&curve)) {
      put(line->b);
      put("l");
    } else {
      const auto& cubic = std::get<CubicCurve>(curve);
      for (const Point p : {cubic.p1, cubic.p2, cubic.p3}) put(p);
      put("c");
    }
  }
}

void PdfContent::stroke(const Stroke& stroke) {
  if (stroke.path.empty()) return;
  use(style_of(stroke));
  path(stroke.path);
  put(stroke.closed ? "s" : "S");
}

void PdfContent::run(const PdfRun& run, double height) {
  put('/' + run.font + ' ' + pdf_number(height) + " Tf");
  ShowArray array;
  double rise = 0.0;
  for (const PdfGlyph& glyph : run.glyphs) {
    if (std::abs(glyph.dy - rise) > kNoShift) {
      put(array.take() + " TJ " + pdf_number(glyph.dy * height) + " Ts");
      rise = glyph.dy;
    }
    array.move_on(glyph.dx);
    array.show(glyph.code);
    array.move_on(glyph.advance - glyph.width - glyph.dx);
  }
  put(array.take() + " TJ");
  if (rise != 0.0) put("0 Ts");
}

void PdfContent::text(const SheetText& text) {
  const PdfLine line = fonts_.set(text.text);
  if (line.runs.empty()) return;
  const Vec along = direction(text.turn);
  const Point start = text.at - (share_before(text.anchor) * line.width * text.height) * along;
  const auto factor = [](double value) { return trimmed(value, kFactorDecimals) + ' '; };
  put("BT");
  text_ += factor(along.x) + factor(along.y) + factor(-along.y) + factor(along.x);
  put(start);
  put("Tm");
  for (const PdfRun& set_run : line.runs) run(set_run, text.height);
  put("ET");
}

}  // namespace blockwright::writing
