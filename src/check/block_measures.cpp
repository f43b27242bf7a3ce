#include "block_measures.hpp"

#include "blockwright/block/kinds.hpp"

namespace blockwright {
namespace {

Angle slope_of(const Piece& piece) {
  const Point leg = dart_on(piece, BlockEdge::Shoulder).legs[1];
  return -angle_of(leg - corner_point(piece, Corner::SideNeck));
}

/// Height of the waist edge straight under the bust point, where no dart leads down to it.
double waist_under(const Piece& front, double x) {
  const Path& waist = part_of(front, BlockEdge::Waist).path;
  double low = 0.0;
  double high = length(waist);
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (low + high);
    (point_at_length(waist, middle).x < x ? low : high) = middle;
  }
  return point_at_length(waist, low).y;
}

}  // namespace

double side_at(const Piece& piece, double y) {
  const Path& side = part_of(piece, BlockEdge::Side).path;
  const Vec along = side.end() - side.start();
  return side.start().x + (y - side.start().y) * along.x / along.y;
}

BlockMeasures::BlockMeasures(const Pattern& pattern)
    : pattern_(pattern),
      front_(piece_of(pattern, kBodiceFront)),
      back_(piece_of(pattern, kBodiceBack)) {}

double BlockMeasures::bust_line_front() const { return side_at(front_, apex_point(front_).y); }

double BlockMeasures::bust_line_back() const {
  const double over_waist = apex_point(front_).y - corner_point(front_, Corner::SideWaist).y;
  return side_at(back_, corner_point(back_, Corner::SideWaist).y + over_waist);
}

Angle BlockMeasures::front_slope() const { return slope_of(front_); }
Angle BlockMeasures::back_slope() const { return slope_of(back_); }

Point BlockMeasures::closed_front_shoulder_point() const {
  const Dart& dart = dart_on(front_, BlockEdge::Shoulder);
  return rotated_about(corner_point(front_, Corner::ShoulderPoint), dart.apex, dart.angle());
}

double BlockMeasures::across_front_half() const {
  const Dart& dart = dart_on(front_, BlockEdge::Shoulder);
  return rotated_about(across_point(front_), dart.apex, dart.angle()).x;
}

double BlockMeasures::armhole() const { return half_length(pattern_, BlockEdge::Armhole); }

double BlockMeasures::neckline() const { return half_length(pattern_, BlockEdge::Neckline); }

double BlockMeasures::waist() const { return half_length(pattern_, BlockEdge::Waist); }

double BlockMeasures::side_neck_to_bust_point() const {
  return distance(corner_point(front_, Corner::SideNeck), apex_point(front_));
}

double BlockMeasures::side_neck_to_waist() const {
  const Point bust = apex_point(front_);
  const Dart* dart = find_dart_on(front_, BlockEdge::Waist);
  const double below = dart != nullptr ? dart->leg() : bust.y - waist_under(front_, bust.x);
  return side_neck_to_bust_point() + below;
}

double BlockMeasures::upper_chest_half() const {
  const double scyes = corner_point(front_, Corner::Underarm).x - across_point(front_).x +
                       corner_point(back_, Corner::Underarm).x - across_point(back_).x;
  return across_point(back_).x + across_front_half() + scyes;
}

}  // namespace blockwright
