#include "method/block.hpp"

#include <stdexcept>
#include <string>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

Placement closing(const Dart& dart) { return Placement::turn(dart.angle(), dart.apex); }

}  // namespace

Placement Block::close_front() const { return closing(front().dart("shoulder")); }
Placement Block::close_back() const { return closing(back().dart("shoulder")); }

Point Block::step(const char* piece, const char* point) const {
  for (const DraftStep& step : steps) {
    if (step.piece == piece && step.point == point) return step.at;
  }
  throw std::runtime_error(std::string("the draft has no ") + point);
}

Placement at_origin(Point origin) { return Placement::shift(origin - Point{}); }

const Path& edge_of(const Piece& piece, const char* name) { return piece.edge(name).path; }

Vec down_shoulder(const Piece& piece) {
  return unit(piece.dart("shoulder").legs[1] - piece.landmark("side_neck_point"));
}

void name_halves(Diagram& d) {
  d.heading({kFrontOrigin.x, kHeadingLine}, "Half front");
  d.heading({kBackOrigin.x, kHeadingLine}, "Half back");
}

void draw_upper_frame(Diagram& d, const Piece& piece, const std::vector<Point>& shoulder,
                      const char* centre) {
  d.line(edge_of(piece, centre), Look::Before);
  d.line(edge_of(piece, "neckline"), Look::Before);
  d.line(Path::through(shoulder), Look::Before);
}

}  // namespace blockwright_pictures
