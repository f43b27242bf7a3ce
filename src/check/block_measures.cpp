#include "block_measures.hpp"

#include <algorithm>

namespace blockwright {
namespace {

Angle slope_of(const Piece& piece) {
  const Point leg = piece.dart("shoulder").legs[1];
  return -angle_of(leg - piece.landmark("side_neck_point"));
}

/// Height of the waist edge straight under the bust point, where no dart leads down to it.
double waist_under(const Piece& front, double x) {
  const Path& waist = front.edge("waist").path;
  double low = 0.0;
  double high = length(waist);
  for (int step = 0; step < 60; ++step) {
    const double middle = 0.5 * (low + high);
    (point_at_length(waist, middle).x < x ? low : high) = middle;
  }
  return point_at_length(waist, low).y;
}

bool has_waist_dart(const Piece& piece) {
  return std::any_of(piece.darts.begin(), piece.darts.end(),
                     [](const Dart& dart) { return dart.name == "waist"; });
}

}  // namespace

double side_at(const Piece& piece, double y) {
  const Path& side = piece.edge("side").path;
  const Vec along = side.end() - side.start();
  return side.start().x + (y - side.start().y) * along.x / along.y;
}

BlockMeasures::BlockMeasures(const Pattern& pattern)
    : front_(pattern.piece("front")), back_(pattern.piece("back")) {}

double BlockMeasures::bust_line_front() const {
  return side_at(front_, front_.landmark("bust_point").y);
}

double BlockMeasures::bust_line_back() const {
  const double over_waist = front_.landmark("bust_point").y - front_.landmark("side_waist_point").y;
  return side_at(back_, back_.landmark("side_waist_point").y + over_waist);
}

Angle BlockMeasures::front_slope() const { return slope_of(front_); }
Angle BlockMeasures::back_slope() const { return slope_of(back_); }

Point BlockMeasures::closed_front_shoulder_point() const {
  const Dart& dart = front_.dart("shoulder");
  return rotated_about(front_.landmark("shoulder_point"), dart.apex, dart.angle());
}

double BlockMeasures::across_front_half() const {
  const Dart& dart = front_.dart("shoulder");
  return rotated_about(front_.landmark("across_front_point"), dart.apex, dart.angle()).x;
}

double BlockMeasures::armhole() const {
  return length(front_.edge("armhole").path) + length(back_.edge("armhole").path);
}

double BlockMeasures::neckline() const {
  return length(front_.edge("neckline").path) + length(back_.edge("neckline").path);
}

double BlockMeasures::side_neck_to_waist() const {
  const Point bust = front_.landmark("bust_point");
  const double to_bust = distance(front_.landmark("side_neck_point"), bust);
  const double below =
      has_waist_dart(front_) ? front_.dart("waist").leg() : bust.y - waist_under(front_, bust.x);
  return to_bust + below;
}

double BlockMeasures::upper_chest_half() const {
  const double scyes = front_.landmark("underarm_point").x -
                       front_.landmark("across_front_point").x +
                       back_.landmark("underarm_point").x - back_.landmark("across_back_point").x;
  return back_.landmark("across_back_point").x + across_front_half() + scyes;
}

std::optional<double> BlockMeasures::measured(MeasurementName name) const {
  using enum MeasurementName;
  switch (name) {
    case BustGirth:
      return 2.0 * (bust_line_front() + bust_line_back());
    case UpperChestGirth:
      return 2.0 * upper_chest_half();
    case WaistGirth:
      return 2.0 *
             (sewn_length(front_, front_.edge("waist")) + sewn_length(back_, back_.edge("waist")));
    case NeckBaseGirth:
      return 2.0 * neckline();
    case ArmscyeGirth:
      return armhole();
    case ShoulderLength:
      return sewn_length(front_, front_.edge("shoulder"));
    case ShoulderSlope:
      return (0.5 * (front_slope() + back_slope())).degrees();
    case FrontShoulderSlant:
      return norm(closed_front_shoulder_point() - front_.landmark("centre_waist"));
    case BackShoulderSlant:
      return norm(back_.landmark("shoulder_point") - back_.landmark("centre_waist"));
    case BackWaistLength:
      return length(back_.edge("centre_back").path);
    case FrontWaistLength:
      return length(front_.edge("centre_front").path);
    case SideNeckToBustPoint:
      return distance(front_.landmark("side_neck_point"), front_.landmark("bust_point"));
    case SideNeckToWaist:
      return side_neck_to_waist();
    case BustPointWidth:
      return 2.0 * front_.landmark("bust_point").x;
    case AcrossBack:
      return 2.0 * back_.landmark("across_back_point").x;
    case AcrossFront:
      return 2.0 * across_front_half();
    case SideLength:
      return length(front_.edge("side").path);
    case FrontBustWidth:
      return 2.0 * bust_line_front();
    default:
      return std::nullopt;
  }
}

}  // namespace blockwright
