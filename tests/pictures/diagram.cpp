#include "diagram.hpp"

#include "blockwright/base/number_text.hpp"

#include <cmath>
#include <fstream>
#include <numbers>
#include <stdexcept>
#include <variant>
#include <vector>

namespace blockwright_pictures {
namespace {

using namespace blockwright;

constexpr double kText = 9.0;
constexpr double kHeading = 13.0;
constexpr double kLineFeed = 11.0;
constexpr double kMiddle = 0.35;  // of the letters' size: from baseline to the middle
constexpr double kDot = 2.0;
constexpr double kArrow = 5.0;
constexpr double kSquare = 8.0;

std::string number(double mm) { return trimmed(mm, 2); }

std::string look_attributes(Look look) {
  switch (look) {
    case Look::New:
      return "stroke='black' stroke-width='1.1'";
    case Look::Fault:
      return "stroke='black' stroke-width='1.9' stroke-linecap='round'";
    case Look::Before:
      return "stroke='#777' stroke-width='0.9'";
    case Look::Guide:
      return "stroke='#aaa' stroke-width='0.6'";
    case Look::Compass:
      return "stroke='#555' stroke-width='0.7' stroke-dasharray='5 3'";
  }
  return {};
}

const char* const kDimensionLook = "stroke='#444' stroke-width='0.5'";

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char c : text) {
    if (c == '\n') {
      lines.emplace_back();
    } else {
      lines.back() += c;
    }
  }
  return lines;
}

Path arc(Point centre, Point from, Angle by) {
  constexpr int kParts = 24;
  std::vector<Point> points;
  for (int i = 0; i <= kParts; ++i) {
    points.push_back(rotated_about(from, centre, static_cast<double>(i) / kParts * by));
  }
  return Path::through(points);
}

}  // namespace

std::string Diagram::at(Point p) const { return number(p.x) + ' ' + number(height_ - p.y); }

void Diagram::stroke(const Path& path, const std::string& attributes) {
  std::string data = "M " + at(path.start());
  for (const Curve& curve : path.curves()) {
    if (const auto* segment = std::get_if<Segment>(&curve)) {
      data += " L " + at(segment->b);
    } else {
      const auto& cubic = std::get<CubicCurve>(curve);
      data += " C " + at(cubic.p1) + ' ' + at(cubic.p2) + ' ' + at(cubic.p3);
    }
  }
  body_ += "<path " + attributes + " d='" + data + "'/>\n";
}

void Diagram::line(const Path& path, Look look) {
  stroke(placed(path, placement_), look_attributes(look));
}

void Diagram::line(Point a, Point b, Look look) { line(Path::through({a, b}), look); }

void Diagram::compass(Point centre, Point through, Angle spread) {
  line(arc(centre, rotated_about(through, centre, -spread), 2.0 * spread), Look::Compass);
}

void Diagram::dot(Point p) {
  const Point here = placement_(p);
  body_ += "<circle fill='black' stroke='none' cx='" + number(here.x) + "' cy='" +
           number(height_ - here.y) + "' r='" + number(kDot) + "'/>\n";
}

void Diagram::text(Point here, double size, const std::string& anchor, double turn,
                   const std::string& line) {
  const std::string place = "x='" + number(here.x) + "' y='" + number(height_ - here.y) + "'";
  body_ += "<text " + place + " font-size='" + number(size) + "' text-anchor='" + anchor + "'";
  if (turn != 0.0) body_ += " transform='rotate(" + number(turn) + ' ' + at(here) + ")'";
  body_ +=
      " fill='black' stroke='white' stroke-width='2.5' paint-order='stroke'>" + line + "</text>\n";
}

void Diagram::label(Point p, Vec off, const std::string& words) {
  const std::vector<std::string> lines = lines_of(words);
  const std::string anchor = off.x > 0.0 ? "start" : off.x < 0.0 ? "end" : "middle";
  Point here = placement_(p) + off;
  here.y += 0.5 * kLineFeed * static_cast<double>(lines.size() - 1) - kMiddle * kText;
  for (const std::string& line : lines) {
    text(here, kText, anchor, 0.0, line);
    here.y -= kLineFeed;
  }
}

void Diagram::point(Point p, Vec off, const std::string& name) {
  dot(p);
  label(p, off, name);
}

void Diagram::arrow(Point tip, Vec pointing) {
  const Vec back = -kArrow * unit(pointing);
  const Vec aside = 0.3 * left_of(back);
  stroke(Path::through({tip + back + aside, tip, tip + back - aside}), kDimensionLook);
}

void Diagram::dimension(Point a, Point b, double aside, const std::string& name) {
  dimension(a, b, aside, {}, "");
  const Vec along = placement_(b - a);
  const Vec left = placement_.mirrors() ? right_of(unit(along)) : left_of(unit(along));
  double turn = -angle_of(along).degrees();
  if (turn >= 90.0) turn -= 180.0;
  if (turn < -90.0) turn += 180.0;
  const Vec up = rotated(Vec{0.0, 1.0}, Angle::degrees(-turn));
  const Point middle = midpoint(placement_(a), placement_(b)) + aside * left + 2.0 * up;
  text(middle, kText, "middle", turn, name);
}

void Diagram::dimension(Point a, Point b, double aside, Vec off, const std::string& name) {
  const Vec left = left_of(unit(b - a));
  const Point from = placement_(a + aside * left), to = placement_(b + aside * left);
  stroke(Path::through({from, to}), kDimensionLook);
  arrow(from, from - to);
  arrow(to, to - from);
  if (aside != 0.0) {
    stroke(Path::through({placement_(a), from}), look_attributes(Look::Guide));
    stroke(Path::through({placement_(b), to}), look_attributes(Look::Guide));
  }
  if (!name.empty()) label(a + 0.5 * (b - a) + aside * left, off, name);
}

void Diagram::turn(Point centre, Point from, Angle by, Vec off, const std::string& name) {
  const Path path = placed(arc(centre, from, by), placement_);
  stroke(path, kDimensionLook);
  arrow(path.end(), end_tangent(path));
  label(rotated_about(from, centre, 0.5 * by), off, name);
}

void Diagram::square(Point corner, Vec a, Vec b) {
  const Vec along = kSquare * unit(a), up = kSquare * unit(b);
  stroke(placed(Path::through({corner + along, corner + along + up, corner + up}), placement_),
         kDimensionLook);
}

void Diagram::heading(Point p, const std::string& words) { text(p, kHeading, "start", 0.0, words); }

std::string Diagram::svg(const std::string& title) const {
  const std::string size = number(width_) + ' ' + number(height_);
  return "<svg xmlns='http://www.w3.org/2000/svg' width='" + number(shown_) + "' viewBox='0 0 " +
         size + "'>\n<title>" + title +
         "</title>\n<rect width='100%' height='100%' fill='white'/>\n" +
         "<g fill='none' stroke-linejoin='round' font-family='DejaVu Sans, sans-serif'>\n" + body_ +
         "</g>\n</svg>\n";
}

void Diagram::write(const std::string& title, const std::string& file) const {
  std::ofstream out(file);
  out << svg(title);
  if (!out.flush()) throw std::runtime_error("cannot write " + file);
}

}  // namespace blockwright_pictures
