#include "blockwright/geometry/fair_path.hpp"

#include <vector>

namespace blockwright {
namespace {

bool is_given(Vec v) { return v != Vec{}; }

Vec along_circle(Point before, Point here, Point after) {
  const Vec in = here - before, out = after - here;
  return norm(out) * unit(in) + norm(in) * unit(out);
}

/// A chord of a circle, and the circle's direction at one of its ends.
struct CircleChord {
  Vec chord, direction;
};

/// The circle's direction at the other end.
Vec other_direction(const CircleChord& circle) {
  const Vec along = unit(circle.chord);
  return 2.0 * dot(along, circle.direction) * along - circle.direction;
}

std::vector<Vec> directions(std::span<const Through> points) {
  const std::size_t last = points.size() - 1;
  const Vec first_chord = points[1].at - points[0].at;
  const Vec last_chord = points[last].at - points[last - 1].at;
  std::vector<Vec> all(points.size());
  for (std::size_t i = 1; i < last; ++i) {
    all[i] = along_circle(points[i - 1].at, points[i].at, points[i + 1].at);
  }
  for (std::size_t i = 0; i <= last; ++i) {
    if (points[i].along) all[i] = *points[i].along;
  }
  if (!is_given(all[1])) all[1] = first_chord;
  if (!points[0].along) all[0] = other_direction({first_chord, all[1]});
  if (!points[last].along) all[last] = other_direction({last_chord, all[last - 1]});
  return all;
}

}  // namespace

Path fair_path(std::span<const Through> points) {
  const std::vector<Vec> along = directions(points);
  Path path;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    path.add(fair_curve(points[i].at, along[i], points[i + 1].at, along[i + 1]));
  }
  return path;
}

Path smooth_through(std::span<const Point> points, const EndDirections& ends) {
  std::vector<Through> through;
  for (const Point point : points) through.push_back({point});
  if (is_given(ends.leaving)) through.front().along = ends.leaving;
  if (is_given(ends.arriving)) through.back().along = ends.arriving;
  return fair_path(through);
}

}  // namespace blockwright
