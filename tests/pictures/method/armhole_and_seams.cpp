#include "method/pictures.hpp"

namespace blockwright_pictures {

using namespace blockwright;

namespace {

void draw_piece_before_armhole(Diagram& d, const Piece& piece) {
  for (const Edge& edge : piece.edges) {
    if (edge.name == "side" || edge.name == "armhole") continue;
    for (const Path& stretch : sewn_stretches(piece, edge)) d.line(stretch, Look::Before);
  }
  for (const Dart& dart : piece.darts) {
    d.line(Path::through({dart.legs[0], dart.apex, dart.legs[1]}), Look::Before);
  }
}

void draw_armhole_of(Diagram& d, const Piece& piece) {
  const Path& side = edge_of(piece, "side");
  const Path& armhole = edge_of(piece, "armhole");
  draw_piece_before_armhole(d, piece);
  d.line(side, Look::New);
  d.line(armhole, Look::New);
  d.square(side.end(), side.start() - side.end(), start_tangent(armhole));
  d.square(armhole.end(), -end_tangent(armhole), start_tangent(edge_of(piece, "shoulder")));
  d.dot(side.start());
  d.point(side.end(), {-20.0, -16.0}, "underarm\npoint");
  d.point(armhole.end(), {8.0, 4.0}, "shoulder\npoint");
}

void draw_underarm(Diagram& d, const Block& b) {
  const Path& side = edge_of(b.front(), "side");
  const double drop = -b.drafted.ease[MeasurementName::SideLength].number();
  const Point armpit = side.end() + drop * unit(side.end() - side.start());
  d.line(side.end(), armpit, Look::Compass);
  d.dimension(side.start(), armpit, -36.0, "side length");
  d.dimension(side.end(), armpit, -12.0, {0.0, 32.0}, "underarm drop");
  d.point(armpit, {-6.0, 0.0}, "armpit");
}

}  // namespace

void draw_armholes(Diagram& d, const Block& b) {
  name_halves(d);
  draw_armhole_of(d, b.front());
  draw_underarm(d, b);
  d.point(b.front().landmark("across_front_point"), {-8.0, 0.0}, "across-front\npoint");
  d.label(b.front().landmark("bust_point"), {45.0, -30.0},
          "front armhole\n+ back armhole\n= armscye girth\n+ its ease");
  d.place(at_origin(kBackOrigin));
  draw_armhole_of(d, b.back());
  d.point(b.back().landmark("across_back_point"), {-8.0, 0.0}, "across-back\npoint");
}

namespace {

/// Lays the back beside the front, right sides up, so that its seam from `back_a` along
/// `back_along` lies on the front's.
Placement sewn_to(Point front_a, Vec front_along, Point back_a, Vec back_along) {
  const Placement mirrored = Placement::shift(Point{} - back_a).then(Placement::mirror());
  const Angle turn = turn_between(mirrored(back_along), front_along);
  return mirrored.then(Placement::turn(turn)).then(Placement::shift(front_a - Point{}));
}

/// The lower part of an armhole, from the underarm to the across point.
Path lower_armhole(const Piece& piece) {
  return Path({edge_of(piece, "armhole").curves().front()});
}

void draw_joined_shoulder(Diagram& d, const Block& b, const Placement& table) {
  const Piece& front = b.front();
  const Piece& back = b.back();
  const Point side = front.landmark("side_neck_point"), neck = front.landmark("front_neck_point");
  const Point end = b.step("front", "shoulder point, dart closed");
  const Point back_side = back.landmark("side_neck_point"), nape = back.landmark("nape");
  d.place(table);
  d.line(side, end, Look::Before);
  d.line(neck, neck - Vec{0.0, 60.0}, Look::Before);
  d.line(edge_of(front, "neckline"), Look::New);
  d.line(placed(edge_of(front, "armhole"), b.close_front()), Look::New);
  d.label(midpoint(side, end), {0.0, -20.0}, "shoulder seam");
  d.label({110.0, 300.0}, {0.0, 0.0}, "front");
  d.label(neck, {-6.0, 8.0}, "front neck\npoint");
  d.point(side, {-7.0, 0.0}, "side neck\npoint");
  d.point(end, {9.0, -4.0}, "shoulder point");
  d.place(sewn_to(side, end - side, back_side, down_shoulder(back)).then(table));
  d.line(nape, nape - Vec{0.0, 60.0}, Look::Before);
  d.line(edge_of(back, "neckline"), Look::New);
  d.line(placed(edge_of(back, "armhole"), b.close_back()), Look::New);
  d.label({95.0, 310.0}, {0.0, 0.0}, "back");
  d.label(nape, {-6.0, 6.0}, "nape");
}

void draw_joined_side(Diagram& d, const Block& b, const Placement& table) {
  const Path& front = edge_of(b.front(), "side");
  const Path& back = edge_of(b.back(), "side");
  d.place(table);
  d.line(front, Look::Before);
  d.line(lower_armhole(b.front()), Look::New);
  d.line(sewn_stretches(b.front(), b.front().edge("waist")).back(), Look::New);
  d.label(midpoint(front.start(), front.end()), {-30.0, 0.0}, "front");
  d.label(midpoint(front.start(), front.end()), {30.0, 0.0}, "back");
  d.point(front.end(), {0.0, 24.0}, "underarm\npoint");
  d.point(front.start(), {0.0, -12.0}, "side waist point");
  d.place(
      sewn_to(front.start(), front.end() - front.start(), back.start(), back.end() - back.start())
          .then(table));
  d.line(lower_armhole(b.back()), Look::New);
  d.line(sewn_stretches(b.back(), b.back().edge("waist")).back(), Look::New);
}

}  // namespace

void draw_joined_seams(Diagram& d, const Block& b) {
  d.heading({60.0, kHeadingLine}, "Joined at the shoulder, darts closed");
  d.heading({470.0, kHeadingLine}, "Joined at the side");
  draw_joined_shoulder(d, b, at_origin({75.0, -110.0}));
  draw_joined_side(d, b, at_origin({345.0, 150.0}));
}

}  // namespace blockwright_pictures
