#include "body_points.hpp"
#include "on_paper.hpp"
#include "outlines.hpp"
#include "tapes.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// In shares of the numbers' height: marks, clear paper between a number and its tape, and how wide
// and high digits are.
constexpr double kDotRadius = 0.17;
constexpr double kHeadLength = 0.75;
constexpr double kClear = 0.32;
constexpr double kDigitWidth = 0.64;
constexpr double kDigitHeight = 0.73;
// An arrow's barb stands this much of its length beside the shaft.
constexpr double kHeadSlant = 0.36;
constexpr double kFigureQuarter = 0.5522847498307936;  // handle of a quarter circle

Path path_of(const Course& course) {
  return smooth_through(std::span(course.through).first(course.count), course.ends);
}

CubicCurve quarter_of(Point centre, Vec from, Vec to) {
  const Point a = centre + from, b = centre + to;
  return {a, a + kFigureQuarter * to, b + kFigureQuarter * from, b};
}

/// From her right to her left, by `depth` below or above the centre.
Path half_round(const Round& round, double depth) {
  const Vec across = rotated(Vec{round.across, 0.0}, round.turn);
  const Vec down = rotated(Vec{0.0, -depth}, round.turn);
  Path path;
  path.add(quarter_of(round.centre, -across, down));
  path.add(quarter_of(round.centre, down, across));
  return path;
}

Path ring(Point centre, double radius) {
  const Vec right = {radius, 0.0}, up = {0.0, radius};
  Path path;
  path.add(quarter_of(centre, right, up));
  path.add(quarter_of(centre, up, -right));
  path.add(quarter_of(centre, -right, -up));
  path.add(quarter_of(centre, -up, right));
  return path;
}

class FigureSheet {
 public:
  FigureSheet(TapeFigure figure, const FigureSize& size)
      : figure_(figure), size_(size), frame_(frame_of(figure)), paper_(frame_, size.scale) {
    drawing_.width = size.scale * frame_.width();
    drawing_.height = size.scale * frame_.height();
  }

  void draw_body() {
    for (const BodyLine& line : outline_of(figure_)) {
      const Path path = smooth_through(line.through, line.ends);
      add(line.ink, path);
      if (line.sides == BodyLine::Sides::Both) add(line.ink, placed(path, Placement::mirror()));
    }
  }

  void draw_tape(const Tape& tape) {
    const bool is_round = tape.round.across > 0.0;
    const Path seen =
        paper_(is_round ? half_round(tape.round, tape.round.before) : path_of(tape.course));
    if (is_round) add(FigureInk::HiddenTape, half_round(tape.round, -tape.round.behind));
    if (tape.hidden.count > 0) add(FigureInk::HiddenTape, path_of(tape.hidden));
    draw_numbered(tape, seen);
    draw_ends(tape, seen);
  }

  [[nodiscard]] FigureDrawing done() && { return std::move(drawing_); }
  [[nodiscard]] Point place(Point body) const { return paper_(body); }

 private:
  void put(FigureInk ink, Path path) { drawing_.lines.push_back({ink, std::move(path)}); }
  void add(FigureInk ink, const Path& body) { put(ink, paper_(body)); }
  void dot(Point at) { put(FigureInk::Held, ring(at, kDotRadius * size_.number)); }

  void head(Point tip, Vec pointing) {
    const Vec back = -kHeadLength * size_.number * unit(pointing);
    const Vec aside = kHeadSlant * left_of(back);
    put(FigureInk::ReadOff, Path::through({tip + back + aside, tip, tip + back - aside}));
  }

  void draw_ends(const Tape& tape, const Path& seen) {
    if (tape.held == HeldAt::Front) {
      draw_closed_end(seen, tape.held_share);
      return;
    }
    if (tape.held == HeldAt::Start) dot(seen.start());
    head(seen.end(), end_tangent(seen));
  }

  void draw_closed_end(const Path& seen, double share) {
    const double along = share * length(seen);
    const double before = along - 2.0 * kDotRadius * size_.number;
    dot(point_at_length(seen, along));
    head(point_at_length(seen, before), tangent_at_length(seen, before));
  }

  void draw_numbered(const Tape& tape, const Path& seen) {
    const double whole = length(seen), at = tape.number.share * whole;
    FigureNumber number{std::to_string(tape_number(tape.name)), point_at_length(seen, at)};
    if (tape.number.aside == Vec{}) {
      const double gap = gap_for(number, tangent_at_length(seen, at));
      put(FigureInk::Tape, sub_path(seen, {0.0, at - gap}));
      put(FigureInk::Tape, sub_path(seen, {at + gap, whole}));
    } else {
      number.at = number.at + size_.scale * tape.number.aside;
      put(FigureInk::Tape, seen);
    }
    drawing_.numbers.push_back(std::move(number));
  }

  /// How far from the number's middle a tape of that direction leaves its room.
  [[nodiscard]] double gap_for(const FigureNumber& number, Vec along) const {
    const Box room = room_of(number, size_);
    const double x = std::abs(along.x), y = std::abs(along.y);
    const double across = 0.5 * room.width() / std::max(x, 1e-6);
    const double up = 0.5 * room.height() / std::max(y, 1e-6);
    return std::min(across, up) + kClear * size_.number;
  }

  TapeFigure figure_;
  FigureSize size_;
  Box frame_;
  OnPaper paper_;
  FigureDrawing drawing_;
};

struct NamedPoint {
  std::string_view name;
  TapeFigure figure;
  Point at;
};

constexpr std::array<NamedPoint, 7> kNamedPoints = {{
    {"side neck point", TapeFigure::Front, body::kSideNeck},
    {"front neck point", TapeFigure::Front, body::kFrontNeck},
    {"shoulder point", TapeFigure::Front, body::kShoulder},
    {"bust point", TapeFigure::Front, body::kBustPoint},
    {"underarm point", TapeFigure::Front, body::kUnderarm},
    {"natural waist", TapeFigure::Front, body::kWaistSide},
    {"nape", TapeFigure::Back, body::kNape},
}};

}  // namespace

Box room_of(const FigureNumber& number, const FigureSize& size) {
  const double half_width =
      0.5 * kDigitWidth * size.number * static_cast<double>(number.text.size());
  const double half_height = 0.5 * kDigitHeight * size.number;
  return {number.at.x - half_width, number.at.y - half_height, number.at.x + half_width,
          number.at.y + half_height};
}

FigureDrawing drawing_of(TapeFigure figure, const FigureSize& size) {
  FigureSheet sheet(figure, size);
  sheet.draw_body();
  for (const MeasurementName name : tapes_on(figure)) sheet.draw_tape(tape_of(name));
  return std::move(sheet).done();
}

FigureDrawing body_of(TapeFigure figure, const FigureSize& size) {
  FigureSheet sheet(figure, size);
  sheet.draw_body();
  return std::move(sheet).done();
}

std::vector<BodyPoint> points_of(TapeFigure figure, const FigureSize& size) {
  const FigureSheet sheet(figure, size);
  std::vector<BodyPoint> points;
  for (const NamedPoint& point : kNamedPoints) {
    if (point.figure == figure) points.push_back({point.name, figure, sheet.place(point.at)});
  }
  return points;
}

}  // namespace blockwright
