#include "svg_path.hpp"

#include "blockwright/base/number_text.hpp"

#include <variant>

namespace blockwright::writing {
namespace {

constexpr int kSvgDecimals = 3;

struct PathData {
  double height;
  std::string text;

  void move(Point p) { add("M", {p}); }
  void operator()(const Segment& line) { add(" L", {line.b}); }
  void operator()(const CubicCurve& curve) { add(" C", {curve.p1, curve.p2, curve.p3}); }

 private:
  void add(std::string_view command, std::initializer_list<Point> points) {
    text += command;
    bool first = true;
    for (const Point p : points) {
      if (!first) text += ' ';
      first = false;
      text += svg_number(p.x) + ' ' + svg_number(height - p.y);
    }
  }
};

}  // namespace

std::string svg_number(double mm) { return trimmed(mm, kSvgDecimals); }

std::string svg_path_data(const Stroke& stroke, double sheet_height) {
  PathData data{sheet_height, {}};
  data.move(stroke.path.start());
  for (const Curve& curve : stroke.path.curves()) std::visit(data, curve);
  if (stroke.closed) data.text += " Z";
  return std::move(data.text);
}

}  // namespace blockwright::writing
