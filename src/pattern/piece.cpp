#include "blockwright/pattern/piece.hpp"

#include "blockwright/base/error.hpp"

#include <cmath>

namespace blockwright {
namespace {

template <class Items>
const auto& named(const Items& items, std::string_view name, const char* what) {
  const auto* item = find_named(items, name);
  require(item != nullptr, what);
  return *item;
}

// A place this near to a closed mouth is the mouth, in mm.
constexpr double kOnMouth = 1e-9;
// How far from the inner leg's end a dart's edge turns at most, in widths of its mouth. Ours: a
// seam that slopes so much would make a long spike of cloth.
constexpr double kFarthestPeak = 2.0;

// A leg end that is a joint of the path but for rounding is that joint, so that paths are parted
// there without leaving a sliver.
NearestOnPath on_path(const Path& path, Point leg_end) {
  NearestOnPath found = nearest(path, leg_end);
  const Curve& stroke = path.curves()[found.place.curve];
  for (const double t : {0.0, 1.0}) {
    const Point joint = t == 0.0 ? start_of(stroke) : end_of(stroke);
    if (distance(found.point, joint) > kJointTolerance) continue;
    found.place.t = t;
    found.point = joint;
  }
  return found;
}

// A stretch of an edge's path that is shorter when sewn: a mouth, or gathers.
struct TakenUp {
  double from = 0.0, to = 0.0, sewn = 0.0;
};

std::vector<TakenUp> taken_up_along(const Piece& piece, const Edge& edge) {
  std::vector<TakenUp> stretches;
  for (const Mouth& mouth : mouths_along(piece, edge)) {
    if (mouth.out.along > mouth.in.along)
      stretches.push_back({mouth.in.along, mouth.out.along, 0.0});
  }
  for (const Fullness& f : piece.fullness) {
    if (f.edge == edge.name) stretches.push_back({f.from, f.to, f.sewn});
  }
  std::sort(stretches.begin(), stretches.end(),
            [](const TakenUp& a, const TakenUp& b) { return a.from < b.from; });
  return stretches;
}

}  // namespace

std::string_view edge_role_name(EdgeRole role) {
  constexpr std::string_view names[] = {"seam", "fold", "hem", "free_edge", "opening"};
  return names[static_cast<std::size_t>(role)];
}

std::string_view finish_name(Finish finish) {
  constexpr std::string_view names[] = {"not_said", "fold",  "panel_seam",  "seam", "enclosed",
                                        "turned",   "bound", "folded_back", "raw"};
  return names[static_cast<std::size_t>(finish)];
}

std::string_view closure_name(Closure closure) {
  constexpr std::string_view names[] = {"zip", "open_zip", "buttons"};
  return names[static_cast<std::size_t>(closure)];
}

std::string_view material_name(Material material) {
  return material == Material::Cloth ? "cloth" : "interfacing";
}

Angle Dart::angle() const {
  const Angle turn = turn_between(legs[0] - apex, legs[1] - apex);
  return Angle::radians(std::abs(turn.radians()));
}

Point Dart::closed_as_stitched(Point p) const {
  return rotated_about(p, point, turn_between(legs[0] - point, legs[1] - point));
}

const Edge& Piece::edge(std::string_view edge_name) const {
  return named(edges, edge_name, "no such edge");
}

const Dart& Piece::dart(std::string_view dart_name) const {
  return named(darts, dart_name, "no such dart");
}

Point Piece::landmark(std::string_view landmark_name) const {
  return named(landmarks, landmark_name, "no such landmark").at;
}

Dart placed(Dart dart, const Placement& placement) {
  for (Point* p : {&dart.apex, &dart.point, &dart.peak, &dart.legs[0], &dart.legs[1]}) {
    *p = placement(*p);
  }
  return dart;
}

std::vector<Mouth> mouths_along(const Piece& piece, const Edge& edge) {
  std::vector<Mouth> mouths;
  for (const Dart& dart : piece.darts) {
    if (dart.edge != edge.name) continue;
    mouths.push_back({&dart, on_path(edge.path, dart.legs[0]), on_path(edge.path, dart.legs[1])});
  }
  std::stable_sort(mouths.begin(), mouths.end(),
                   [](const Mouth& a, const Mouth& b) { return a.in.along < b.in.along; });
  return mouths;
}

std::vector<Path> sewn_stretches(const std::vector<Mouth>& mouths, const Path& path) {
  std::vector<Path> stretches;
  stretches.reserve(mouths.size() + 1);
  PathPlace from;
  for (const Mouth& mouth : mouths) {
    stretches.push_back(part_between(path, from, mouth.in.place));
    from = mouth.out.place;
  }
  stretches.push_back(mouths.empty() ? path : part_after(path, from));
  return stretches;
}

std::vector<Path> sewn_stretches(const Piece& piece, const Edge& edge) {
  return sewn_stretches(mouths_along(piece, edge), edge.path);
}

double sewn_length(const Piece& piece, const Edge& edge) {
  double sum = length(edge.path);
  for (const Mouth& mouth : mouths_along(piece, edge)) sum -= mouth.out.along - mouth.in.along;
  for (const Fullness& fullness : piece.fullness) {
    if (fullness.edge == edge.name) sum -= fullness.taken_up();
  }
  return sum;
}

double closed_from_cut(const Piece& piece, const Edge& edge, double along) {
  double closed = along;
  for (const TakenUp& t : taken_up_along(piece, edge)) {
    const double within = std::clamp(along, t.from, t.to) - t.from;
    closed -= within * (1.0 - t.sewn / (t.to - t.from));
  }
  return closed;
}

double cut_from_closed(const Piece& piece, const Edge& edge, double along) {
  double cut = along;
  for (const TakenUp& t : taken_up_along(piece, edge)) {
    if (cut < t.from - kOnMouth) continue;
    const bool drawn_up = t.sewn > 0.0;  // else a mouth: the place is behind it
    if (drawn_up && cut < t.from + t.sewn) {
      return t.from + (cut - t.from) * (t.to - t.from) / t.sewn;
    }
    cut += t.to - t.from - t.sewn;
  }
  return cut;
}

Path flat_outline(const Piece& piece) {
  Path outline;
  for (const Edge& edge : piece.edges) outline.add(edge.path);
  return outline;
}

Path sewing_outline(const Piece& piece) {
  Path outline;
  for (const Edge& edge : piece.edges) {
    const auto mouths = mouths_along(piece, edge);
    const auto stretches = sewn_stretches(mouths, edge.path);
    outline.add(stretches.front());
    for (std::size_t i = 0; i < mouths.size(); ++i) {
      outline.add(Path::through({mouths[i].in.point, mouths[i].dart->apex, mouths[i].out.point}));
      outline.add(stretches[i + 1]);
    }
  }
  return outline;
}

Point dart_peak(Point apex, Point inner_leg, Point outer_leg, Vec seam) {
  const Vec leg = unit(inner_leg - apex);
  const Vec centre = unit(leg + unit(outer_leg - apex));
  // The seam on the other side of the inner leg, seen through the folded cloth: its mirror image.
  const Vec mirrored = 2.0 * dot(-seam, leg) * leg + seam;
  const auto meet = lines_meet(inner_leg, mirrored, apex, centre);
  const bool ahead = meet && dot(*meet - inner_leg, mirrored) > 0.0 &&
                     dot(*meet - apex, centre) > 0.0 &&
                     distance(*meet, inner_leg) <= kFarthestPeak * distance(inner_leg, outer_leg);
  return ahead ? *meet : midpoint(inner_leg, outer_leg);
}

}  // namespace blockwright
