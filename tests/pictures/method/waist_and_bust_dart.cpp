#include "blockwright/block/waist_edge.hpp"
#include "method/pictures.hpp"

#include <cmath>
#include <string>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

std::string percent(double share) { return std::to_string(std::lround(100.0 * share)) + " %"; }

void draw_waist_darts(Diagram& d, const Piece& piece) {
  for (const Dart& dart : piece.darts) {
    if (dart.edge != "waist") continue;
    d.line(Path::through({dart.legs[0], dart.apex, dart.legs[1]}), Look::New);
    d.line(dart.apex, midpoint(dart.legs[0], dart.legs[1]), Look::Guide);
    d.dot(dart.apex);
  }
}

/// The bust line, the waist and the line that the side seam will lie on.
void draw_bust_line_and_waist(Diagram& d, const Piece& piece, Point bust_line_end) {
  const Point waist = piece.landmark("side_waist_point");
  d.line({0.0, bust_line_end.y}, bust_line_end, Look::New);
  d.line(waist, bust_line_end + 0.3 * (bust_line_end - waist), Look::New);
  d.line(bust_line_end, {bust_line_end.x, waist.y}, Look::Guide);
  for (const Path& stretch : sewn_stretches(piece, piece.edge("waist"))) d.line(stretch, Look::New);
  draw_waist_darts(d, piece);
  d.dimension({waist.x, waist.y - 12.0}, {bust_line_end.x, waist.y - 12.0}, 0.0, {0.0, -10.0},
              percent(kSideShare));
  d.point(waist, {-4.0, -12.0}, "side waist point");
  d.dot(bust_line_end);
}

void draw_front_waist(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Point end = b.step("front", "side of the bust line");
  const Dart& dart = front.dart("waist");
  draw_upper_frame(
      d, front, {front.landmark("side_neck_point"), b.step("front", "shoulder point, dart closed")},
      "centre_front");
  draw_bust_line_and_waist(d, front, end);
  d.dimension({0.0, end.y}, end, 14.0, "the front's part of half the bust girth");
  d.dimension(dart.legs[0], dart.legs[1], -12.0, {0.0, -10.0}, percent(kFrontDartShare));
  d.point(dart.apex, {-7.0, -9.0}, "bust point");
}

void draw_back_waist(Diagram& d, const Block& b) {
  const Piece& back = b.back();
  const Point end = b.step("back", "side of the bust line");
  const Dart& dart = back.dart("shoulder");
  draw_upper_frame(d, back,
                   {back.landmark("side_neck_point"), dart.legs[1], dart.apex, dart.legs[0],
                    back.landmark("shoulder_point")},
                   "centre_back");
  draw_bust_line_and_waist(d, back, end);
  d.dimension({0.0, end.y}, end, 14.0, "the back's part");
  d.label(midpoint(back.dart("waist").apex, back.dart("waist_outer").apex), {0.0, -68.0},
          "the rest:\none dart\nor more");
}

}  // namespace

void draw_waists(Diagram& d, const Block& b) {
  name_halves(d);
  draw_front_waist(d, b);
  d.label({0.5 * kBackOrigin.x - 45.0, 240.0}, {0.0, 0.0},
          "to lose on the half body:\nhalf the bust line less half the waist,\neach with its ease "
          "= 100 %");
  d.place(at_origin(kBackOrigin));
  draw_back_waist(d, b);
}

namespace {

/// The lower front, as it stands before the bust dart is drawn.
void draw_lower_front(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Point end = b.step("front", "side of the bust line");
  const Point waist = front.landmark("side_waist_point");
  d.line({0.0, end.y}, end, Look::Before);
  d.line(waist, front.landmark("underarm_point"), Look::Before);
  for (const Path& stretch : sewn_stretches(front, front.edge("waist"))) {
    d.line(stretch, Look::Before);
  }
  const Dart& dart = front.dart("waist");
  d.line(Path::through({dart.legs[0], dart.apex, dart.legs[1]}), Look::Before);
}

void draw_closed_dart(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Dart& dart = front.dart("shoulder");
  const Point shoulder = b.step("front", "shoulder point, dart closed");
  const Point across = b.step("front", "across-front point, dart closed");
  draw_upper_frame(d, front, {front.landmark("side_neck_point"), shoulder}, "centre_front");
  draw_lower_front(d, b);
  d.line({0.0, across.y}, across, Look::New);
  d.line(dart.legs[1], dart.apex, Look::New);
  d.dimension({0.0, across.y}, across, 10.0, "half across front");
  d.point(dart.apex, {-7.0, 10.0}, "bust point");
  d.point(across, {7.0, 0.0}, "across-front\npoint");
  d.point(shoulder, {8.0, 2.0}, "shoulder point");
  d.point(dart.legs[1], {5.0, 11.0}, "middle of the shoulder");
}

void draw_armhole_part(Diagram& d, Point across, Point underarm) {
  const double level = underarm.y - 18.0;
  d.line(across, {across.x, level - 4.0}, Look::Guide);
  d.line(underarm, {underarm.x, level - 4.0}, Look::Guide);
  d.dimension({across.x, level}, {underarm.x, level}, 0.0, {0.0, 42.0},
              "front's part of\nthe armhole width");
}

void draw_open_dart(Diagram& d, const Block& b) {
  const Piece& front = b.front();
  const Dart& dart = front.dart("shoulder");
  const Point across = front.landmark("across_front_point");
  const Point shoulder = front.landmark("shoulder_point");
  draw_upper_frame(d, front, {front.landmark("side_neck_point"), dart.legs[1]}, "centre_front");
  draw_lower_front(d, b);
  d.line(dart.legs[1], b.step("front", "shoulder point, dart closed"), Look::Compass);
  d.line(dart.apex, b.step("front", "across-front point, dart closed"), Look::Compass);
  d.line(dart.apex, across, Look::New);
  draw_armhole_part(d, across, front.landmark("underarm_point"));
  d.line(Path::through({dart.legs[1], dart.apex, dart.legs[0], shoulder}), Look::New);
  d.turn(dart.apex, between(dart.apex, dart.legs[1], 0.62), -dart.angle(), {0.0, 10.0},
         "bust dart");
  d.turn(dart.apex, b.step("front", "across-front point, dart closed"), -dart.angle(), {}, "");
  d.point(dart.apex, {-7.0, 10.0}, "bust point");
  d.point(across, {7.0, 10.0}, "across-front\npoint, turned");
  d.point(shoulder, {4.0, -11.0}, "shoulder point");
  d.point(front.landmark("underarm_point"), {7.0, -6.0}, "underarm\npoint");
}

}  // namespace

void draw_bust_dart(Diagram& d, const Block& b) {
  d.heading({kFrontOrigin.x, kHeadingLine}, "Half front, bust dart closed");
  d.heading({kFrontOrigin.x + 360.0, kHeadingLine}, "Half front, bust dart open");
  draw_closed_dart(d, b);
  d.place(at_origin(kFrontOrigin + Vec{360.0, 0.0}));
  draw_open_dart(d, b);
}

}  // namespace blockwright_pictures
