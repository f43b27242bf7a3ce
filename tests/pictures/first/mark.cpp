#include "darts/sketch.hpp"
#include "first/pictures.hpp"
#include "fits/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kLarger = 1.5;  // than the bodices of how folds are read
constexpr double kWaistLine = 50.0;
constexpr Point kSeen{195.0, kWaistLine}, kMarked{585.0, kWaistLine};
constexpr double kRulerWidth = 9.0, kTick = 4.0;

class Bodice : public Sketch {
 public:
  Bodice(Diagram& diagram, Point at) : Sketch(diagram, kLarger, at), diagram_(diagram) {}

  void curve(Point a, Point b, Point c, Point e, Look look) const {
    line(Path({CubicCurve{a, b, c, e}}), look);
  }
  void outline() const {
    line(half_bodice(), Look::Before);
    line(placed(half_bodice(), Placement::mirror()), Look::Before);
    line({0, 0}, {0, 101}, Look::Guide);
  }
  void arrow(Point from, Point to) const { draw_arrow(diagram_, (*this)(from), (*this)(to)); }

 private:
  Diagram& diagram_;
};

void draw_seen(const Bodice& b) {
  b.outline();
  for (const double drop : {3.0, 7.0, 11.0}) {
    const double side = 0.8 * drop;
    b.curve({-19 - side, 118 - drop}, {-12, 101 - drop}, {-6, 99 - drop}, {0, 99 - drop},
            Look::New);
    b.curve({0, 99 - drop}, {6, 99 - drop}, {12, 101 - drop}, {19 + side, 118 - drop}, Look::New);
  }
  b.arrow({62, 112}, {27, 107});
  b.label({62, 112}, {5, 0}, "small tight folds\nround the throat");
  b.label({0, -22}, {}, "seen: the front neck presses on the throat");
}

// A ruler held down the centre front, in steps of half a centimetre: 8 units are 1 cm here.
void draw_ruler(const Bodice& b) {
  constexpr double cm = 8.0;
  const double left = -kRulerWidth, bottom = 101.0 - 3.0 * cm;
  b.line({left, 101}, {left, bottom}, Look::New);
  b.line({left, bottom}, {0, bottom}, Look::New);
  b.line({0, bottom}, {0, 101}, Look::New);
  for (int i = 0; i <= 6; ++i) {
    const double y = 101.0 - 0.5 * cm * i;
    b.line({0, y}, {i % 2 == 0 ? -kTick : -0.5 * kTick, y}, Look::New);
  }
}

void draw_marked(const Bodice& b) {
  b.outline();
  b.curve({-22, 127}, {-19, 101}, {-10, 93}, {0, 93}, Look::Compass);
  b.curve({0, 93}, {10, 93}, {19, 101}, {22, 127}, Look::Compass);
  draw_ruler(b);
  b.arrow({64, 90}, {16, 97});
  b.label({64, 90}, {5, 0}, "chalk line where\nthe edge should be");
  b.label({-kRulerWidth, 93}, {-6, 0}, "1.0 cm\ndown");
  b.label({0, -22}, {}, "marked: measure from the edge to the chalk, at the centre front");
}

}  // namespace

void draw_mark(Diagram& d) {
  draw_seen(Bodice(d, kSeen));
  draw_marked(Bodice(d, kMarked));
}

}  // namespace blockwright_pictures
