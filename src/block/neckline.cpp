#include "blockwright/block/neckline.hpp"

#include "blockwright/block/reshape.hpp"

#include <cmath>

namespace blockwright {
namespace {

// As the way to the corner grows shorter, the handles keep their share of it.
constexpr double kNecklineFollows = 0.0;

}  // namespace

Angle steepest_neckline(NeckSize size) {
  return Angle::radians(std::atan((1.0 - kNeckCornerRoom) * size.width / size.depth));
}

double neckline_room(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = lines_meet(from, leaving, to, arriving);
  return corner ? dot(to - *corner, arriving) / dot(to - from, arriving) : 1.0;
}

Vec neckline_leaving(Point from, Vec wished, Point to, Vec arriving, double least) {
  if (neckline_room(from, wished, to, arriving) >= least) return wished;
  return unit(to - least * dot(to - from, arriving) * arriving - from);
}

CubicCurve neckline(Point side_neck, Vec leaving, Point centre, Vec arriving) {
  return corner_curve(side_neck, leaving, centre, arriving, kNecklineFullness);
}

CubicCurve reshaped_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                             Vec arriving) {
  return bent_one_way(old, from, unit(leaving), to, unit(arriving), kNecklineFollows);
}

}  // namespace blockwright
