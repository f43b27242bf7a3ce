#include "half_piece.hpp"

#include "blockwright/geometry/path_parts.hpp"
#include "closed_shoulder.hpp"
#include "parts.hpp"

#include <algorithm>

namespace blockwright {
namespace {

void put_landmark(Piece& piece, std::string_view name, Point at) {
  for (Landmark& landmark : piece.landmarks) {
    if (landmark.name == name) landmark.at = at;
  }
}

void set_landmarks(Piece& piece, const Opened& open) {
  const bool front = piece.name == "front";
  put_landmark(piece, "centre_waist", corner_of(open, Corner::CentreWaist));
  put_landmark(piece, "side_waist_point", corner_of(open, Corner::SideWaist));
  put_landmark(piece, "underarm_point", corner_of(open, Corner::Underarm));
  put_landmark(piece, "shoulder_point", corner_of(open, Corner::ShoulderPoint));
  put_landmark(piece, "side_neck_point", corner_of(open, Corner::SideNeck));
  put_landmark(piece, front ? "front_neck_point" : "nape", corner_of(open, Corner::CentreNeck));
  put_landmark(piece, front ? "across_front_point" : "across_back_point", across_of(open));
  put_landmark(piece, front ? "bust_point" : "blade_point", open.at(shoulder_dart(open)).apex);
}

// Level through the side notch; on the front by way of the bust point.
Path bust_line(const Opened& open) {
  const Point notch = point_at_length(
      open.edges[static_cast<std::size_t>(BlockEdge::Side)].stretches.front(), side_notch(open));
  const Point bust = open.at(shoulder_dart(open)).apex;
  if (open.piece.name != "front") {
    return Path::through({{centre_at(open, notch.y), notch.y}, notch});
  }
  return without_straight_joints(Path::through({{centre_at(open, bust.y), bust.y}, bust, notch}));
}

// Level with the shoulder dart closed: to the dart, and its turned outer part to the across point.
Path across_line(const Opened& open) {
  const Dart& dart = open.at(shoulder_dart(open));
  const Angle angle = dart.angle();
  const Point end = across_of(open), closed = rotated_about(end, dart.apex, angle);
  const double share = (closed.y - dart.apex.y) / (dart.legs[1].y - dart.apex.y);
  const double centre = centre_at(open, closed.y);
  const bool over_the_apex = share > 1e-9 && share < 1.0;
  if (!over_the_apex) return Path::through({{centre_at(open, end.y), end.y}, end});
  const Point inner = between(dart.apex, dart.legs[1], share);
  return Path::through({{centre, closed.y}, inner, rotated_about(inner, dart.apex, -angle), end});
}

void set_lines(Piece& piece, const Opened& open) {
  for (BalanceLine& line : piece.balance_lines) {
    if (line.name == "bust_line") line.path = bust_line(open);
    if (line.name == "across_front_line" || line.name == "across_back_line") {
      line.path = across_line(open);
    }
    if (line.name == "waist_line") line.path = open.edges.front().stretches.back();
  }
}

}  // namespace

bool same_shape(const Piece& a, const Piece& b) {
  return std::equal(a.edges.begin(), a.edges.end(), b.edges.begin(), b.edges.end(),
                    [](const Edge& x, const Edge& y) { return x.path == y.path; }) &&
         a.darts == b.darts && a.balance_lines.size() == b.balance_lines.size() &&
         std::equal(a.notches.begin(), a.notches.end(), b.notches.begin(), b.notches.end(),
                    [](const Notch& x, const Notch& y) { return x.along == y.along; });
}

bool same_shape(const Opened& a, const Opened& b) {
  return a.edges == b.edges && a.notches == b.notches && a.fullness == b.fullness &&
         a.piece.balance_lines.size() == b.piece.balance_lines.size();
}

Piece finished_piece(const Opened& open, const Piece& before) {
  if (same_shape(open, opened(before))) return before;
  Piece piece = put_together(open);
  set_landmarks(piece, open);
  set_lines(piece, open);
  return piece;
}

}  // namespace blockwright
