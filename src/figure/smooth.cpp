#include "smooth.hpp"

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

std::vector<Vec> directions(std::span<const Point> points, const EndDirections& ends) {
  std::vector<Vec> all(points.size());
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    all[i] = along_circle(points[i - 1], points[i], points[i + 1]);
  }
  const std::size_t last = points.size() - 1;
  const Vec first_chord = points[1] - points[0], last_chord = points[last] - points[last - 1];
  all[last] = ends.arriving;
  if (!is_given(all[1])) all[1] = first_chord;
  all[0] = is_given(ends.leaving) ? ends.leaving : other_direction({first_chord, all[1]});
  if (!is_given(ends.arriving)) {
    all[last] = other_direction({last_chord, last == 1 ? all[0] : all[last - 1]});
  }
  return all;
}

}  // namespace

Path smooth_through(std::span<const Point> points, const EndDirections& ends) {
  const std::vector<Vec> along = directions(points, ends);
  Path path;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    path.add(fair_curve(points[i], along[i], points[i + 1], along[i + 1]));
  }
  return path;
}

}  // namespace blockwright
