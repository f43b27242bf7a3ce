#include "blockwright/pattern/piece.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/construct.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

template <class Items>
const auto& named(const Items& items, std::string_view name, const char* what) {
  const auto it =
      std::find_if(items.begin(), items.end(), [&](const auto& item) { return item.name == name; });
  require(it != items.end(), what);
  return *it;
}

// Where a dart opens on its edge: the two leg ends, brought onto the edge.
struct Mouth {
  Point apex;
  NearestOnPath in, out;
};

std::vector<Mouth> mouths_along(const Piece& piece, const Edge& edge) {
  std::vector<Mouth> mouths;
  for (const Dart& dart : piece.darts) {
    if (dart.edge != edge.name) continue;
    mouths.push_back(
        {dart.apex, nearest(edge.path, dart.legs[0]), nearest(edge.path, dart.legs[1])});
  }
  std::stable_sort(mouths.begin(), mouths.end(),
                   [](const Mouth& a, const Mouth& b) { return a.in.along < b.in.along; });
  return mouths;
}

// The stretches before, between and after the mouths: always one more than there are mouths.
std::vector<Path> stretches_between(const std::vector<Mouth>& mouths, const Path& path) {
  std::vector<Path> stretches;
  double from = 0.0;
  for (const Mouth& mouth : mouths) {
    stretches.push_back(sub_path(path, from, mouth.in.along));
    from = mouth.out.along;
  }
  stretches.push_back(mouths.empty() ? path : sub_path(path, from, length(path)));
  return stretches;
}

}  // namespace

std::string_view edge_role_name(EdgeRole role) {
  switch (role) {
    case EdgeRole::Seam:
      return "seam";
    case EdgeRole::Fold:
      return "fold";
    case EdgeRole::Hem:
      return "hem";
    case EdgeRole::Opening:
      return "opening";
  }
  return "seam";
}

Angle Dart::angle() const {
  const Angle turn = turn_between(legs[0] - apex, legs[1] - apex);
  return Angle::radians(std::abs(turn.radians()));
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

std::vector<Path> sewn_stretches(const Piece& piece, const Edge& edge) {
  return stretches_between(mouths_along(piece, edge), edge.path);
}

double sewn_length(const Piece& piece, const Edge& edge) {
  double sum = 0.0;
  for (const Path& stretch : sewn_stretches(piece, edge)) sum += length(stretch);
  return sum;
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
    const auto stretches = stretches_between(mouths, edge.path);
    outline.add(stretches.front());
    for (std::size_t i = 0; i < mouths.size(); ++i) {
      outline.add(Segment{mouths[i].in.point, mouths[i].apex});
      outline.add(Segment{mouths[i].apex, mouths[i].out.point});
      outline.add(stretches[i + 1]);
    }
  }
  return outline;
}

Point dart_cap(Point apex, Point inner_leg, Point outer_leg, Vec seam) {
  const Vec leg = unit(inner_leg - apex);
  const Vec centre = unit(leg + unit(outer_leg - apex));
  // The seam on the other side of the inner leg, seen through the folded cloth: its mirror image.
  const Vec mirrored = 2.0 * dot(-seam, leg) * leg + seam;
  const auto meet = lines_meet(inner_leg, mirrored, apex, centre);
  const bool ahead =
      meet && dot(*meet - inner_leg, mirrored) > 0.0 && dot(*meet - apex, centre) > 0.0;
  return ahead ? *meet : midpoint(inner_leg, outer_leg);
}

}  // namespace blockwright
