#include "blockwright/geometry/path_parts.hpp"

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

// True if the joint of two segments lies within rounding of the line through their far ends.
bool goes_straight_on(const Curve& before, const Curve& after) {
  const auto* first = std::get_if<Segment>(&before);
  const auto* second = std::get_if<Segment>(&after);
  if (first == nullptr || second == nullptr) return false;
  const Vec u = first->b - first->a, whole = second->b - first->a;
  return dot(u, second->b - second->a) > 0.0 &&
         std::abs(cross(u, whole)) <= kStraight * norm(whole);
}

// True of a stroke that rounding errors left behind where a path was taken apart.
bool is_speck(const Curve& curve) {
  const Point start = start_of(curve);
  const auto is_here = [&](Point p) { return distance(start, p) <= kStraight; };
  if (const auto* s = std::get_if<Segment>(&curve)) return is_here(s->b);
  const auto& c = std::get<CubicCurve>(curve);
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
  if (!curves.empty()) curves.back() = reversed(starting_at(reversed(curves.back()), end));
  return Path(std::move(curves));
}

// Neighbours of a speck meet where it began or, at the end of the path, where it ended.
Path without_specks(Path path) {
  const std::vector<Curve>& curves = path.curves();
  std::vector<Curve> kept;
  bool dropped = false;
  for (const Curve& curve : curves) {
    if (is_speck(curve)) {
      dropped = true;
      continue;
    }
    const Point joint = kept.empty() ? start_of(curves.front()) : end_of(kept.back());
    kept.push_back(dropped ? starting_at(curve, joint) : curve);
    dropped = false;
  }
  if (kept.empty()) return path;
  if (dropped) kept.back() = reversed(starting_at(reversed(kept.back()), end_of(curves.back())));
  return Path(std::move(kept));
}

Path without_straight_joints(Path path) {
  std::vector<Curve> curves = without_specks(std::move(path)).curves();
  std::size_t kept = 0;
  for (std::size_t i = 1; i < curves.size(); ++i) {
    if (goes_straight_on(curves[kept], curves[i])) {
      curves[kept] = Segment{start_of(curves[kept]), end_of(curves[i])};
    } else {
      curves[++kept] = curves[i];
    }
  }
  if (kept + 1 < curves.size()) curves.resize(kept + 1);
  return Path(std::move(curves));
}

void append(Path& path, const Path& next, double snap) {
  if (next.empty()) return;
  if (path.empty()) {
    path.add(next);
    return;
  }
  append_line(path, next.start(), snap);
  path.add(starting_at(next, path.end()));
}

void append_line(Path& path, Point to, double snap) {
  if (distance(path.end(), to) > snap) path.add(Segment{path.end(), to});
}

}  // namespace blockwright
