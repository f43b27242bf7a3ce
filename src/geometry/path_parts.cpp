#include "blockwright/geometry/path_parts.hpp"

#include <cmath>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

constexpr double kStraight = 1e-9;

Curve starting_at(const Curve& curve, Point start) {
  if (const auto* s = std::get_if<Segment>(&curve)) return Segment{start, s->b};
  const auto& c = std::get<CubicCurve>(curve);
  return CubicCurve{start, c.p1 + (start - c.p0), c.p2, c.p3};
}

// True if the joint of two segments lies within rounding of the line through their far ends.
bool goes_straight_on(const Curve& before, const Curve& after) {
  const auto* first = std::get_if<Segment>(&before);
  const auto* second = std::get_if<Segment>(&after);
  if (first == nullptr || second == nullptr) return false;
  const Vec u = first->b - first->a, whole = second->b - first->a;
  return dot(u, second->b - second->a) > 0.0 &&
         std::abs(cross(u, whole)) <= kStraight * norm(whole);
}

}  // namespace

bool comes_before(PathPlace a, PathPlace b) {
  return a.curve != b.curve ? a.curve < b.curve : a.t < b.t;
}

Path part_before(const Path& path, PathPlace place) {
  Path part;
  for (std::size_t i = 0; i < place.curve && i < path.curves().size(); ++i) {
    part.add(path.curves()[i]);
  }
  if (place.curve < path.curves().size() && place.t > 0.0) {
    part.add(split_at(path.curves()[place.curve], place.t).first);
  }
  return part;
}

Path part_after(const Path& path, PathPlace place) {
  Path part;
  if (place.curve < path.curves().size() && place.t < 1.0) {
    part.add(split_at(path.curves()[place.curve], place.t).second);
  }
  for (std::size_t i = place.curve + 1; i < path.curves().size(); ++i) part.add(path.curves()[i]);
  return part;
}

Path part_between(const Path& path, PathPlace from, PathPlace to) {
  if (!comes_before(from, to)) return {};
  const double within = from.curve == to.curve ? from.t / to.t : from.t;
  return part_after(part_before(path, to), {from.curve, within});
}

Path starting_at(const Path& path, Point start) {
  std::vector<Curve> curves = path.curves();
  if (!curves.empty()) curves.front() = starting_at(curves.front(), start);
  return Path(std::move(curves));
}

Path ending_at(const Path& path, Point end) { return reversed(starting_at(reversed(path), end)); }

Path without_straight_joints(const Path& path) {
  std::vector<Curve> curves;
  curves.reserve(path.curves().size());
  for (const Curve& curve : path.curves()) {
    if (curves.empty() || !goes_straight_on(curves.back(), curve)) {
      curves.push_back(curve);
    } else {
      curves.back() = Segment{start_of(curves.back()), end_of(curve)};
    }
  }
  return Path(std::move(curves));
}

void append(Path& path, const Path& next, double snap) {
  if (next.empty()) return;
  if (path.empty()) {
    path.add(next);
    return;
  }
  append_line(path, next.start(), snap);
  path.add(starting_at(next.curves().front(), path.end()));
  for (std::size_t i = 1; i < next.curves().size(); ++i) path.add(next.curves()[i]);
}

void append_line(Path& path, Point to, double snap) {
  if (distance(path.end(), to) > snap) path.add(Segment{path.end(), to});
}

}  // namespace blockwright
