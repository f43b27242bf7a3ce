#include "method/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

void draw_front_neck(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Point neck = front.landmark("front_neck_point"), side = front.landmark("side_neck_point");
  const Point bust = front.landmark("bust_point");
  const Point dip = bust - Vec{0.0, front.dart("waist").leg()};
  d.line({0.0, 0.0}, {210.0, 0.0}, Look::Guide);
  d.line({0.0, bust.y}, {210.0, bust.y}, Look::Guide);
  d.line({side.x, bust.y}, {side.x, side.y + 12.0}, Look::Guide);
  d.line({0.0, 0.0}, neck, Look::New);
  d.compass(bust, side, Angle::degrees(9.0));
  d.line(edge_of(front, "neckline"), Look::New);
  d.square(neck, {1.0, 0.0}, {0.0, -1.0});
  d.dimension({0.0, 0.0}, neck, 28.0, "front waist length");
  d.dimension({0.0, bust.y}, bust, -16.0, {0.0, -14.0}, "half bust\npoint width");
  d.dimension(bust, dip, 12.0, {6.0, 0.0}, "side neck to waist\nless side neck\nto bust point");
  d.dimension(side, bust, 16.0, "side neck to bust point");
  d.dimension({0.0, side.y}, side, 16.0, {0.0, 10.0}, "neck width");
  d.point({}, {-6.0, -11.0}, "centre waist");
  d.point(neck, {-6.0, 8.0}, "front neck point");
  d.point(bust, {22.0, 9.0}, "bust point");
  d.point(side, {9.0, 8.0}, "side neck point");
  d.point(dip, {0.0, -12.0}, "the waist dips 5 mm");
}

void draw_back_neck(Diagram& d, const Block& b) {
  const Piece& back = b.back();
  const Point nape = back.landmark("nape"), side = back.landmark("side_neck_point");
  d.line({0.0, 0.0}, {210.0, 0.0}, Look::Guide);
  d.line(nape, {side.x + 40.0, nape.y}, Look::Guide);
  d.line({0.0, 0.0}, nape, Look::New);
  d.line(edge_of(back, "neckline"), Look::New);
  d.square(nape, {1.0, 0.0}, {0.0, -1.0});
  d.dimension({0.0, 0.0}, nape, 28.0, "back waist length");
  d.dimension({0.0, side.y}, side, 16.0, {0.0, 10.0}, "neck width");
  d.dimension({side.x, nape.y}, side, -26.0, {8.0, 0.0}, "0.3 of the\nneck width");
  d.label({28.0, nape.y}, {1.0, -40.0},
          "half the back neckline\n+ half the front neckline\n= half the neck base girth");
  d.point({}, {-6.0, -11.0}, "centre waist");
  d.point(nape, {-6.0, 8.0}, "nape");
  d.point(side, {9.0, 12.0}, "side neck point");
}

}  // namespace

void draw_necks(Diagram& d, const Block& b) {
  name_halves(d);
  draw_front_neck(d, b);
  d.place(at_origin(kBackOrigin));
  draw_back_neck(d, b);
}

namespace {

void draw_front_shoulder(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Point side = front.landmark("side_neck_point");
  const Point shoulder = b.step("front", "shoulder point, dart closed");
  d.line({0.0, 0.0}, front.landmark("front_neck_point"), Look::Before);
  d.line(edge_of(front, "neckline"), Look::Before);
  d.line(side, shoulder, Look::New);
  d.compass(side, shoulder, Angle::degrees(14.0));
  d.compass({}, shoulder, Angle::degrees(5.0));
  d.dimension(side, shoulder, 12.0, "shoulder length");
  d.dimension({}, shoulder, 0.0, "front shoulder slant");
  d.square(side, down_shoulder(front), start_tangent(edge_of(front, "neckline")));
  d.point({}, {-6.0, -11.0}, "centre waist");
  d.point(front.landmark("bust_point"), {8.0, 0.0}, "bust point");
  d.point(side, {-8.0, 6.0}, "side neck point");
  d.point(shoulder, {9.0, 2.0}, "shoulder point,\nbust dart still closed");
}

void draw_back_shoulder(Diagram& d, const Block& b) {
  const Piece& back = b.back();
  const Dart& dart = back.dart("shoulder");
  const Point side = back.landmark("side_neck_point"), shoulder = back.landmark("shoulder_point");
  const Point across = back.landmark("across_back_point"), nape = back.landmark("nape");
  d.line({0.0, 0.0}, nape, Look::Before);
  d.line(edge_of(back, "neckline"), Look::Before);
  d.line({0.0, across.y}, across, Look::New);
  d.line(dart.legs[1], b.close_back()(shoulder), Look::Compass);
  d.line(Path::through({side, dart.legs[1], dart.apex, dart.legs[0], shoulder}), Look::New);
  d.compass({}, shoulder, Angle::degrees(5.0));
  d.dimension({}, shoulder, 0.0, "back shoulder slant");
  d.dimension({0.0, across.y}, nape, 14.0, "0.6 of scye depth");
  d.dimension({0.0, across.y}, across, -13.0, {-1.0, -9.0}, "half across back");
  d.label(midpoint(dart.legs[0], dart.legs[1]), {12.0, 20.0},
          "13 mm dart in the\nmiddle of the shoulder");
  d.point({}, {-6.0, -11.0}, "centre waist");
  d.point(dart.apex, {-6.0, 9.0}, "blade point");
  d.point(across, {7.0, 0.0}, "across-back\npoint");
  d.point(shoulder, {9.0, 2.0}, "shoulder point");
  d.point(side, {0.0, 12.0}, "side neck point");
}

}  // namespace

void draw_shoulders(Diagram& d, const Block& b) {
  name_halves(d);
  draw_front_shoulder(d, b);
  d.place(at_origin(kBackOrigin));
  draw_back_shoulder(d, b);
}

}  // namespace blockwright_pictures
