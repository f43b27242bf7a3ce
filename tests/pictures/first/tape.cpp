#include "darts/sketch.hpp"
#include "first/pictures.hpp"

#include <string>
#include <vector>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

// A body from the hip to the neck, seen from in front or behind: no person's. Its units, with the
// origin at the centre waist, are drawn kScale times as large.
constexpr double kScale = 1.85;
constexpr Point kFront{128.0, 52.0}, kBack{388.0, 52.0};
constexpr double kLegend = 550.0, kLegendTop = 312.0, kLegendLine = 16.5;

constexpr Point kNeckFront{0, 108}, kNape{0, 121}, kSideNeck{19, 124}, kShoulder{50, 113};
constexpr Point kUnderarm{43, 64}, kSideWaist{33, 0}, kBust{19, 46};

// The body, and what is drawn on it, in its own units.
class Figure : public Sketch {
 public:
  Figure(Diagram& diagram, Point at) : Sketch(diagram, kScale, at) {}

  void curve(Point a, Point b, Point c, Point e, Look look) const {
    line(Path({CubicCurve{a, b, c, e}}), look);
  }
  // Round the body: the half of the tape that is seen hangs a little.
  void level(double y, double half) const {
    curve({-half, y}, {-0.5 * half, y - 4}, {0.5 * half, y - 4}, {half, y}, Look::New);
  }
  void number(Point at, int which) const { label(at, {}, std::to_string(which)); }

  void body() const {
    for (const double s : {1.0, -1.0}) {
      const auto at = [&](double x, double y) { return Point{s * x, y}; };
      curve(at(17, 146), at(16, 134), at(17, 127), at(19, 124), Look::Before);
      line(at(19, 124), at(50, 113), Look::Before);
      curve(at(50, 113), at(60, 108), at(65, 90), at(66, 62), Look::Before);
      line(at(66, 62), at(49, 58), Look::Before);
      curve(at(49, 58), at(47, 66), at(45, 66), at(43, 64), Look::Before);
      curve(at(43, 64), at(44, 40), at(35, 22), at(33, 0), Look::Before);
      curve(at(33, 0), at(35, -8), at(39, -14), at(42, -22), Look::Before);
    }
  }
};

void draw_front(const Figure& f) {
  f.body();
  f.level(71, 43.5);
  f.number({-34, 69}, 2);
  f.level(46, 43);
  f.number({-34, 43}, 1);
  f.level(29, 38.5);
  f.number({-30, 26}, 3);
  f.level(0, 33);
  f.number({-25, -3}, 4);
  f.curve({-19, 124}, {-14, 112}, {-7, 108}, kNeckFront, Look::New);
  f.curve(kNeckFront, {7, 108}, {14, 112}, kSideNeck, Look::New);
  f.number({-11, 112}, 5);
  f.line(kSideNeck, kShoulder, Look::New);
  f.number({35, 119}, 7);
  f.line({-50, 113}, {0, -3}, Look::Compass);
  f.number({-31, 82}, 8);
  f.line(kNeckFront, {0, -3}, Look::New);
  f.number({0, 60}, 10);
  f.line(kSideNeck, kBust, Look::New);
  f.number({19, 98}, 12);
  f.line(kBust, {19, -3}, Look::Compass);
  f.number({19, 14}, 13);
  f.line({-19, 53}, {19, 53}, Look::New);
  f.number({-10, 53}, 14);
  f.line({-40, 87}, {40, 87}, Look::New);
  f.number({-14, 87}, 16);
  for (const double s : {1.0, -1.0}) f.point({s * kBust.x, kBust.y}, {}, "");
}

void draw_back(const Figure& f) {
  f.body();
  f.level(0, 33);
  f.curve({-19, 124}, {-10, 120}, {10, 120}, kSideNeck, Look::New);
  f.line(kNape, {0, -3}, Look::New);
  f.number({0, 34}, 11);
  f.line({-50, 113}, {0, -3}, Look::Compass);
  f.number({-22, 48}, 9);
  f.line({-42, 87}, {42, 87}, Look::New);
  f.number({-16, 87}, 15);
  f.line({8, 121}, {8, 66}, Look::New);
  f.line({0, 121}, {8, 121}, Look::Guide);
  f.line({-42, 65}, {42, 65}, Look::Guide);
  f.number({8, 102}, 18);
  f.curve(kShoulder, {38, 100}, {38, 70}, kUnderarm, Look::New);
  f.number({39, 98}, 6);
  f.line({kUnderarm.x + 3, kUnderarm.y}, {kSideWaist.x + 3, kSideWaist.y}, Look::New);
  f.number({43, 30}, 17);
  f.point(kNape, {}, "");
}

}  // namespace

void draw_tape(Diagram& d) {
  draw_front(Figure(d, kFront));
  draw_back(Figure(d, kBack));
  const std::vector<std::string> names = {"bust, round the fullest part",
                                          "upper chest, high in the armpits",
                                          "underbust",
                                          "waist, where a tied tape settles",
                                          "neck base",
                                          "armscye, round the arm's root",
                                          "shoulder length",
                                          "front shoulder slant",
                                          "back shoulder slant",
                                          "front waist length",
                                          "back waist length",
                                          "side neck to bust point",
                                          "side neck over the bust to waist",
                                          "bust point width",
                                          "across back",
                                          "across front",
                                          "side length",
                                          "scye depth"};
  for (std::size_t i = 0; i < names.size(); ++i) {
    const double y = kLegendTop - kLegendLine * static_cast<double>(i);
    d.label({kLegend, y}, {-4.0, 0.0}, std::to_string(i + 1));
    d.label({kLegend, y}, {6.0, 0.0}, names[i]);
  }
}

}  // namespace blockwright_pictures
