#include "diagram.hpp"
#include "fits/pictures.hpp"

#include <functional>
#include <string>
#include <vector>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

// The cells of the picture, in its units; in each a bodice is drawn in units of its own.
constexpr double kCellWidth = 260.0, kCellHeight = 212.0;
constexpr double kBodiceWaist = 52.0;  // over the cell's lower end
constexpr double kCaption = 16.0;
constexpr double kLens = 0.06;  // half width of a loose fold, of its length

// One cell: bodice and caption.
class Cell {
 public:
  Cell(Diagram& diagram, Point middle) : d_(diagram), at_(Placement::shift({middle.x, middle.y})) {}

  void bodice() const {
    draw(half_bodice(), Look::Before);
    draw(placed(half_bodice(), Placement::mirror()), Look::Before);
    draw(Path::through({{0, 0}, {0, 101}}), Look::Guide);
  }
  void crease(Point from, Point to) const { draw(Path::through({from, to}), Look::New); }
  // A loose fold bulges to both sides.
  void fold(Point from, Point to) const {
    const Vec along = to - from, out = kLens * left_of(along);
    for (const double side : {1.0, -1.0}) {
      draw(Path({CubicCurve{from, from + 0.3 * along + side * out, from + 0.7 * along + side * out,
                            to}}),
           Look::New);
    }
  }
  void arrow(Point from, Point to) const { draw_arrow(d_, at_(from), at_(to)); }
  void dot(Point p) const { d_.dot(at_(p)); }
  void caption(const std::string& words) const {
    d_.label(at_(Point{0.0, kCaption - kBodiceWaist}), {}, words);
  }

 private:
  void draw(const Path& path, Look look) const { d_.line(placed(path, at_), look); }

  Diagram& d_;
  Placement at_;
};

void tight_and_level(const Cell& cell) {
  cell.crease({-38, 80}, {38, 80});
  cell.crease({-50, 71}, {50, 71});
  cell.crease({-42, 62}, {42, 62});
  for (const double side : {1.0, -1.0}) cell.arrow({side * 62, 71}, {side * 82, 71});
  cell.caption("tight and level:\ntoo narrow there");
}

void tight_and_upright(const Cell& cell) {
  for (const double x : {-14.0, 0.0, 14.0}) cell.crease({x, 12}, {x, x == 0.0 ? 92.0 : 84.0});
  cell.arrow({0, 106}, {0, 126});
  cell.arrow({0, -4}, {0, -20});
  cell.caption("tight and upright:\ntoo short there");
}

void tight_and_pointing(const Cell& cell) {
  constexpr Point bust{22, 62};
  constexpr Vec rays[] = {{22, 18}, {27, 2}, {20, -16}, {4, -28}, {-13, -20}};
  for (const double side : {1.0, -1.0}) {
    const auto mirrored = [&](Point p) { return Point{side * p.x, p.y}; };
    cell.dot(mirrored(bust));
    for (const Vec ray : rays) cell.crease(mirrored(bust + 0.25 * ray), mirrored(bust + ray));
    cell.arrow({side * 80, 78}, {side * 60, 71});
  }
  cell.caption("tight creases point to\nwhat lacks cloth: here the bust");
}

void loose_and_upright(const Cell& cell) {
  for (const double x : {-18.0, 0.0, 18.0}) cell.fold({x, 8}, {x, 92});
  for (const double side : {1.0, -1.0}) cell.arrow({side * 82, 50}, {side * 62, 50});
  cell.caption("loose and upright:\ntoo wide there");
}

void loose_and_level(const Cell& cell) {
  for (const double y : {24.0, 35.0, 46.0}) cell.fold({-40, y}, {40, y});
  for (const double side : {1.0, -1.0}) {
    cell.arrow({side * 68, 66}, {side * 68, 48});
    cell.arrow({side * 68, 4}, {side * 68, 22});
  }
  cell.caption("loose and level:\ntoo long there");
}

void slanting(const Cell& cell) {
  for (const double side : {1.0, -1.0}) {
    cell.fold({side * 24, 120}, {side * 50, 68});
    cell.fold({side * 19, 110}, {side * 46, 54});
    cell.dot({side * 22, 127});
    cell.arrow({side * 44, 132}, {side * 74, 78});
  }
  cell.caption("slanting: from the point that pulls, here\nthe neck, to the slack under the arm");
}

}  // namespace

Path half_bodice() {
  Path path({Segment{{0, 0}, {44, 4}}});
  path.add(Segment{{44, 4}, {56, 70}});
  path.add(CubicCurve{{56, 70}, {42, 74}, {43, 98}, {50, 116}});
  path.add(Segment{{50, 116}, {22, 127}});
  path.add(CubicCurve{{22, 127}, {20, 108}, {10, 101}, {0, 101}});
  return path;
}

void draw_folds(Diagram& d) {
  const std::vector<std::function<void(const Cell&)>> cells = {
      tight_and_level,   tight_and_upright, tight_and_pointing,
      loose_and_upright, loose_and_level,   slanting};
  constexpr std::size_t in_row = 3;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const double row = static_cast<double>(i / in_row), column = static_cast<double>(i % in_row);
    const Cell cell(d, {(column + 0.5) * kCellWidth, (1.0 - row) * kCellHeight + kBodiceWaist});
    cell.bodice();
    cells[i](cell);
  }
}

}  // namespace blockwright_pictures
