#include "blockwright/geometry/path.hpp"

#include <algorithm>
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

Curve ending_at(const Curve& curve, Point end) {
  return reversed(starting_at(reversed(curve), end));
}

// Makes a segment as long as both where the joint to the next one lies within rounding of the line
// through their far ends; else false.
bool goes_straight_on(Curve& stroke, const Curve& next) {
  auto* first = std::get_if<Segment>(&stroke);
  const auto* second = std::get_if<Segment>(&next);
  if (first == nullptr || second == nullptr) return false;
  const Vec u = first->b - first->a, whole = second->b - first->a;
  const bool straight =
      dot(u, second->b - second->a) > 0.0 && std::abs(cross(u, whole)) <= kStraight * norm(whole);
  if (straight) first->b = second->b;
  return straight;
}

// True of a stroke that rounding errors left behind where a path was taken apart.
bool is_speck(const Curve& curve) {
  const CubicCurve c = as_cubic(curve);
  const auto is_here = [&](Point p) { return distance(c.p0, p) <= kStraight; };
  return is_here(c.p1) && is_here(c.p2) && is_here(c.p3);
}

}  // namespace

bool comes_before(PathPlace a, PathPlace b) {
  return a.curve != b.curve ? a.curve < b.curve : a.t < b.t;
}

Path part_before(const Path& path, PathPlace place) {
  const std::vector<Curve>& curves = path.curves();
  const std::size_t whole = std::min(place.curve, curves.size());
  std::vector<Curve> part;
  part.reserve(whole + 1);
  part.assign(curves.begin(), curves.begin() + static_cast<std::ptrdiff_t>(whole));
  if (whole < curves.size() && place.t > 0.0) {
    part.push_back(split_at(curves[whole], place.t).first);
  }
  return Path(std::move(part));
}

Path part_after(const Path& path, PathPlace place) {
  const std::vector<Curve>& curves = path.curves();
  if (place.curve >= curves.size()) return {};
  std::vector<Curve> part(curves.begin() + static_cast<std::ptrdiff_t>(place.curve), curves.end());
  if (place.t < 1.0) {
    part.front() = split_at(part.front(), place.t).second;
  } else {
    part.erase(part.begin());
  }
  return Path(std::move(part));
}

Path part_between(const Path& path, PathPlace from, PathPlace to) {
  if (!comes_before(from, to)) return {};
  const double within = from.curve == to.curve ? from.t / to.t : from.t;
  return part_after(part_before(path, to), {from.curve, within});
}

Path starting_at(Path path, Point start) {
  std::vector<Curve> curves = std::move(path).curves();
  if (!curves.empty()) curves.front() = starting_at(curves.front(), start);
  return Path(std::move(curves));
}

Path ending_at(Path path, Point end) {
  std::vector<Curve> curves = std::move(path).curves();
  if (!curves.empty()) curves.back() = ending_at(curves.back(), end);
  return Path(std::move(curves));
}

// Neighbours of a speck meet where it began or, at the end of the path, where it ended.
Path without_specks(Path path) {
  const std::vector<Curve>& curves = path.curves();
  std::vector<Curve> kept;
  bool dropped = false;
  for (const Curve& curve : curves) {
    if (!is_speck(curve)) {
      const Point joint = kept.empty() ? start_of(curves.front()) : end_of(kept.back());
      kept.push_back(dropped ? starting_at(curve, joint) : curve);
    }
    dropped = is_speck(curve);
  }
  if (kept.empty()) return path;
  if (dropped) kept.back() = ending_at(kept.back(), end_of(curves.back()));
  return Path(std::move(kept));
}

Path without_straight_joints(Path path) {
  std::vector<Curve> curves = without_specks(std::move(path)).curves();
  std::size_t kept = 0;
  for (std::size_t i = 1; i < curves.size(); ++i) {
    if (!goes_straight_on(curves[kept], curves[i])) curves[++kept] = curves[i];
  }
  if (kept + 1 < curves.size()) curves.resize(kept + 1);
  return Path(std::move(curves));
}

void append(Path& path, const Path& next, double snap) {
  if (next.empty()) return;
  if (path.empty()) return path.add(next);
  append_line(path, next.start(), snap);
  path.add(starting_at(next, path.end()));
}

void append_line(Path& path, Point to, double snap) {
  if (distance(path.end(), to) > snap) path.add(Segment{path.end(), to});
}

}  // namespace blockwright
