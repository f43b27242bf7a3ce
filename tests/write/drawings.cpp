#include "write/drawings.hpp"

#include "blockwright/geometry/box.hpp"

namespace blockwright_tests {
namespace {

// Handle length of a cubic quarter circle, 4/3 (sqrt 2 - 1); radial error below 0.03 %.
constexpr double kQuarterCircle = 0.5522847498307936;
constexpr double kMargin = 10.0;

void add(Sheet& sheet, const std::string& piece, const std::string& name, Stroke stroke) {
  stroke.piece = piece;
  stroke.name = name;
  sheet.strokes.push_back(std::move(stroke));
}

Stroke curved(Point a, Point b, Point c, Point d, LineRole role, SheetLayer layer) {
  Stroke stroke{layer, role, {}, {}, {}, false};
  stroke.path.add(CubicCurve{a, b, c, d});
  return stroke;
}

void add_piece(Sheet& sheet, const std::string& piece, Vec shift) {
  const auto at = [&](double x, double y) { return Point{x, y} + shift; };
  Stroke cut{SheetLayer::Cut, LineRole::CutLine, {}, {}, {}, true};
  cut.path.add(Segment{at(0, 0), at(160, 0)});
  cut.path.add(CubicCurve{at(160, 0), at(170, 90), at(120, 130), at(130, 230)});
  cut.path.add(Segment{at(130, 230), at(60, 255)});
  cut.path.add(CubicCurve{at(60, 255), at(55, 215), at(30, 205), at(0, 205)});
  add(sheet, piece, "outline", cut);
  add(sheet, piece, "armhole",
      curved(at(148, 0), at(158, 90), at(108, 130), at(118, 222), LineRole::StitchLine,
             SheetLayer::Stitch));
  add(sheet, piece, "centre", line(at(0, 0), at(0, 205), LineRole::FoldLine, SheetLayer::Stitch));
  add(sheet, piece, "waist dart",
      line(at(60, 10), at(70, 110), LineRole::DartLeg, SheetLayer::Stitch));
  add(sheet, piece, "waist dart",
      line(at(80, 10), at(70, 110), LineRole::DartLeg, SheetLayer::Stitch));
  add(sheet, piece, "bust line",
      line(at(0, 120), at(140, 120), LineRole::BalanceLine, SheetLayer::Marks));
  add(sheet, piece, "grain", line(at(30, 40), at(30, 180), LineRole::Grainline, SheetLayer::Marks));
  add(sheet, piece, "armhole.single",
      line(at(140, 110), at(146, 112), LineRole::Notch, SheetLayer::Marks));
  add(sheet, piece, "dart point", circle(at(70, 110), 2.0, LineRole::Hole, SheetLayer::Marks));
}

}  // namespace

Stroke line(Point a, Point b, LineRole role, SheetLayer layer) {
  return {layer, role, {}, {}, Path::through({a, b}), false};
}

Stroke circle(Point c, double radius, LineRole role, SheetLayer layer) {
  const double h = kQuarterCircle * radius;
  const auto at = [&](double x, double y) { return Point{c.x + x, c.y + y}; };
  Stroke stroke{layer, role, {}, {}, {}, true};
  stroke.path.add(CubicCurve{at(radius, 0), at(radius, h), at(h, radius), at(0, radius)});
  stroke.path.add(CubicCurve{at(0, radius), at(-h, radius), at(-radius, h), at(-radius, 0)});
  stroke.path.add(CubicCurve{at(-radius, 0), at(-radius, -h), at(-h, -radius), at(0, -radius)});
  stroke.path.add(CubicCurve{at(0, -radius), at(h, -radius), at(radius, -h), at(radius, 0)});
  return stroke;
}

Stroke rectangle(const Box& box, LineRole role, SheetLayer layer) {
  return {layer,
          role,
          {},
          {},
          Path::through({{box.left, box.bottom},
                         {box.right, box.bottom},
                         {box.right, box.top},
                         {box.left, box.top}}),
          true};
}

SheetText label(Point at, const std::string& text) {
  return {SheetLayer::Text, {}, text, at, 5.0, TextAnchor::Start, {}};
}

Sheet sample_sheet() {
  Sheet sheet{400.0, 300.0, {}, {}};
  add_piece(sheet, "front", {20, 20});
  add_piece(sheet, "back", {220, 20});
  add(sheet, "front", "outline",
      curved({20, 225}, {60, 230}, {80, 240}, {80, 280}, LineRole::CutLine, SheetLayer::Previous));
  sheet.texts = {label({60, 80}, "Front: cut 1 on the fold"), label({60, 70}, "Zażółć gęślą jaźń"),
                 label({60, 60}, "Εμπρός, στήθος"), label({60, 50}, "Перёд, линия груди"),
                 label({240, 60}, "Back: office fi AVA")};
  for (SheetText& text : sheet.texts) text.piece = text.at.x < 200 ? "front" : "back";
  sheet.texts.push_back(
      {SheetLayer::Text, "front", "grain", {36, 110}, 4.0, TextAnchor::Middle, Angle::degrees(90)});
  return sheet;
}

PrintPlan tiled_plan(const Sheet& sheet, int rows, int columns, double overlap) {
  PrintPlan plan{"Ondine Marsh", sheet, {}};
  plan.pages.push_back({"map", 210, 297, {}, {}, {}});
  plan.pages[0].furniture.strokes.push_back(
      rectangle({20, 20, 120, 120}, LineRole::TestSquare, SheetLayer::Marks));
  plan.pages[0].furniture.texts.push_back(label({20, 260}, "Ondine Marsh, 14 March 2026"));
  const double step_x = 210.0 - 2 * kMargin - overlap;
  const double step_y = 297.0 - 2 * kMargin - overlap;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const double left = column * step_x;
      const double bottom = sheet.height - (row + 1) * step_y - overlap;
      Page page{std::string(1, static_cast<char>('A' + row)) + std::to_string(column + 1),
                210,
                297,
                {},
                Box{left, bottom, left + step_x + overlap, bottom + step_y + overlap},
                {kMargin, kMargin}};
      page.furniture.strokes.push_back(
          rectangle({10, 10, 200, 287}, LineRole::Frame, SheetLayer::Marks));
      page.furniture.texts.push_back(label({12, 12}, page.label));
      plan.pages.push_back(std::move(page));
    }
  }
  return plan;
}

PrintPlan sample_plan() { return tiled_plan(sample_sheet(), 2, 3, 10.0); }

PrintPlan whole_plan(const Sheet& sheet) {
  Page page{"sheet", sheet.width, sheet.height, {}, Box{0, 0, sheet.width, sheet.height}, {}};
  return {"One page", sheet, {page}};
}

const std::vector<std::string>& nasty_names() {
  static const std::vector<std::string> kNames = {
      "<script>alert(1)</script>",
      "a & b \"quoted\" 'single' ]]> <!-- -->",
      "../../etc/passwd",
      "",
      " ",
      "line\nend\ttab\rreturn",
      std::string("nul\0inside", 10),
      "bell\x07 escape\x1b[31m delete\x7f",
      "\xC2\x85 c1 \xC2\x9B",
      "broken \xFF\xC0\x80\xE2\x82 utf-8 \xED\xA0\x80 \xF5\x80\x80\x80",
      "\xEF\xBF\xBF noncharacter \xEF\xB7\x90",
      "שלום עולם 123",
      "مرحبا بالعالم",
      "\xE2\x80\xAE"
      "override",
      "Łucja Żółć-Ñandú (x) \\ back",
      "Ονδίνη / Ундина",
      "e\xCC\x81 combining",
      "日本語の名前",
      "🧵 thread",
      "%s %n {} {0}",
      std::string(300, 'W'),
  };
  return kNames;
}

}  // namespace blockwright_tests
