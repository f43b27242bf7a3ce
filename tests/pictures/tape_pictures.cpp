// Draws the pictures of docs/tape.md.
//
//   tape_pictures FOLDER
//
// writes tape-*.svg into FOLDER.
#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/text/units.hpp"
#include "diagram.hpp"

#include <algorithm>
#include <iostream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace blockwright;
using namespace blockwright_pictures;

constexpr FigureSize kSize{.scale = 0.32, .number = 9.0};
constexpr FigureSize kSmaller{.scale = 0.2, .number = 9.0};  // where all of her stands
constexpr FigureSize kLarger{.scale = 0.68, .number = 9.0};  // where a part is shown
constexpr double kRim = 6.0, kLegendGap = 16.0, kLegendWidth = 128.0;
constexpr double kLegendLine = 17.0;

FigureSize size_of(TapeFigure figure) {
  if (figure == TapeFigure::Side) return kSmaller;
  return figure == TapeFigure::Arm ? kLarger : kSize;
}

Look look_of(FigureInk ink) {
  switch (ink) {
    case FigureInk::Body:
      return Look::Before;
    case FigureInk::Detail:
      return Look::Guide;
    case FigureInk::Guide:
    case FigureInk::HiddenTape:
      return Look::Compass;
    case FigureInk::Tape:
    case FigureInk::Held:
    case FigureInk::ReadOff:
    case FigureInk::Cloth:
    case FigureInk::Seen:
      return Look::New;
  }
  return Look::New;
}

void draw_lines(Diagram& d, const FigureDrawing& figure) {
  for (const FigureLine& line : figure.lines) {
    d.line(line.path, look_of(line.ink));
    if (line.ink == FigureInk::Held) {
      const Box box = box_of(line.path);
      d.dot({0.5 * (box.left + box.right), 0.5 * (box.bottom + box.top)});
    }
  }
  for (const FigureNumber& number : figure.numbers) d.label(number.at, {}, number.text);
}

void draw_legend(Diagram& d, TapeFigure figure, Point top) {
  for (const MeasurementName name : tapes_on(figure)) {
    d.label(top, {-4.0, 0.0}, std::to_string(tape_number(name)));
    d.label(top, {4.0, 0.0}, name_text(info(name).key));
    top.y -= kLegendLine;
  }
  top.y -= kLegendLine;
  d.dot(top);
  d.label(top, {8.0, 0.0}, "held still");
  top.y -= kLegendLine;
  d.line(Path::through({top + Vec{-5.0, -2.5}, top, top + Vec{-5.0, 2.5}}), Look::New);
  d.label(top, {8.0, 0.0}, "read here");
}

/// "tape-shoulder-and-arm.svg"
std::string file_of(TapeFigure figure) {
  std::string name = "tape-" + std::string(figure_title(figure));
  for (char& c : name) c = c == ' ' ? '-' : static_cast<char>(c >= 'A' && c <= 'Z' ? c + 32 : c);
  return name + ".svg";
}

void write_figure(TapeFigure figure, const std::string& folder) {
  const FigureDrawing drawing = drawing_of(figure, size_of(figure));
  const double height = std::max(drawing.height, 170.0) + 2.0 * kRim;
  Diagram d(drawing.width + 2.0 * kRim + kLegendGap + kLegendWidth, height);
  d.place(Placement::shift({kRim, kRim}));
  draw_lines(d, drawing);
  draw_legend(d, figure, {drawing.width + kLegendGap, drawing.height - 20.0});
  d.write(std::string(figure_title(figure)), folder + "/" + file_of(figure));
}

/// Names stand to the right of her, but where there is room on the body.
Vec name_off(std::string_view point) {
  if (point == "bust point") return {-6.0, 0.0};
  return point == "front neck point" || point == "nape" ? Vec{0.0, -9.0} : Vec{6.0, 6.0};
}

void draw_points(Diagram& d, TapeFigure figure, Vec at) {
  d.place(Placement::shift(at));
  FigureDrawing body = body_of(figure, kSize);
  if (figure == TapeFigure::Back) {
    std::erase_if(body.lines, [](const FigureLine& line) { return line.ink == FigureInk::Guide; });
  }
  draw_lines(d, body);
  for (const BodyPoint& point : points_of(figure, kSize)) {
    d.point(point.at, name_off(point.name), std::string(point.name));
  }
}

void write_points(const std::string& folder) {
  const FigureDrawing front = body_of(TapeFigure::Front, kSize);
  const double second = front.width + 45.0;
  Diagram d(second + front.width + 2.0 * kRim, front.height + 2.0 * kRim);
  draw_points(d, TapeFigure::Front, {kRim, kRim});
  draw_points(d, TapeFigure::Back, {kRim + second, kRim});
  d.write("Points of the body", folder + "/tape-points.svg");
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "call: tape_pictures FOLDER\n";
    return 2;
  }
  try {
    for (const TapeFigure figure : kTapeFigures) write_figure(figure, argv[1]);
    write_points(argv[1]);
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 1;
  }
  return 0;
}
