#include "blockwright/dart/opened.hpp"

#include "blockwright/base/error.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

// A mark this near to the end of a stretch belongs to it, in mm.
constexpr double kOnStretch = 1e-6;

// Marks lie on stretches; one in a mouth goes to its first leg.
Anchor anchor_of(const Opened& open, const Edge& edge, double along) {
  const std::size_t e = *find_edge(open, edge.name);
  const auto& darts = open.edges[e].darts;
  double from = 0.0;
  std::size_t i = 0;
  for (; i < darts.size(); ++i) {
    const double to = nearest(edge.path, darts[i].legs[1]).along;
    if (along < to - kOnStretch) break;
    from = to;
  }
  return {e, i, std::clamp(along - from, 0.0, length(open.edges[e].stretches[i]))};
}

double along_of(const Opened& open, const Anchor& anchor) {
  const OpenEdge& edge = open.edges[anchor.edge];
  double along = anchor.along;
  for (std::size_t i = 0; i < anchor.stretch; ++i) {
    along += length(edge.stretches[i]) + length(mouth_path(edge.darts[i]));
  }
  return along;
}

Path whole_path(const OpenEdge& edge) {
  Path path = edge.stretches.front();
  for (std::size_t i = 0; i < edge.darts.size(); ++i) {
    append(path, mouth_path(edge.darts[i]));
    append(path, edge.stretches[i + 1]);
  }
  return without_straight_joints(std::move(path));
}

Vec into_mouth(const OpenEdge& edge, std::size_t d) {
  const bool first = edge.darts[d].pressed_to == Leg::First;
  const Path& stretch = edge.stretches[first ? d : d + 1];
  if (stretch.empty()) return {};
  return first ? end_tangent(stretch) : -start_tangent(stretch);
}

}  // namespace

Path mouth_path(const Dart& dart) { return Path::through({dart.legs[0], dart.peak, dart.legs[1]}); }

Opened opened(const Piece& piece) {
  Opened open;
  open.piece = piece;
  open.piece.edges.clear();
  open.piece.darts.clear();
  open.edges.reserve(piece.edges.size());
  for (const Edge& edge : piece.edges) {
    const std::vector<Mouth> mouths = mouths_along(piece, edge);
    open.edges.push_back(
        {edge.name, edge.role, sewn_stretches(mouths, edge.path), {}, edge.part, edge.finish});
    for (const Mouth& mouth : mouths) open.edges.back().darts.push_back(*mouth.dart);
  }
  for (const Notch& notch : piece.notches) {
    open.notches.push_back(anchor_of(open, piece.edge(notch.edge), notch.along));
  }
  for (const Fullness& f : piece.fullness) {
    const Edge& edge = piece.edge(f.edge);
    open.fullness.push_back({anchor_of(open, edge, f.from), anchor_of(open, edge, f.to)});
  }
  return open;
}

Piece put_together(const Opened& open) {
  Piece piece = open.piece;
  piece.edges.reserve(open.edges.size());
  for (const OpenEdge& edge : open.edges) {
    piece.edges.push_back({edge.name, edge.role, whole_path(edge), edge.part, edge.finish});
    piece.darts.insert(piece.darts.end(), edge.darts.begin(), edge.darts.end());
  }
  for (std::size_t i = 0; i < piece.notches.size(); ++i) {
    piece.notches[i].along = along_of(open, open.notches[i]);
  }
  for (std::size_t i = 0; i < piece.fullness.size(); ++i) {
    piece.fullness[i].from = along_of(open, open.fullness[i][0]);
    piece.fullness[i].to = along_of(open, open.fullness[i][1]);
  }
  return piece;
}

std::optional<DartSpot> find_dart(const Opened& open, std::string_view name) {
  for (std::size_t e = 0; e < open.edges.size(); ++e) {
    const auto& darts = open.edges[e].darts;
    if (const Dart* dart = find_named(darts, name)) {
      return DartSpot{e, static_cast<std::size_t>(dart - darts.data())};
    }
  }
  return std::nullopt;
}

std::optional<std::size_t> find_edge(const Opened& open, std::string_view name) {
  const OpenEdge* edge = find_named(open.edges, name);
  if (edge == nullptr) {
    edge = first_where(open.edges, [&](const OpenEdge& e) { return e.part_name() == name; });
  }
  if (edge == nullptr) return std::nullopt;
  return static_cast<std::size_t>(edge - open.edges.data());
}

double closed_length(const OpenEdge& edge) {
  double sum = 0.0;
  for (const Path& stretch : edge.stretches) sum += length(stretch);
  return sum;
}

Anchor anchor_at(const Opened& open, std::size_t edge, double along) {
  const auto& stretches = open.edges[edge].stretches;
  double from = 0.0;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    const double here = length(stretches[i]);
    if (here > 0.0 && (along <= from + here + kOnStretch || i + 1 == stretches.size())) {
      return {edge, i, std::clamp(along - from, 0.0, here)};
    }
    from += here;
  }
  return {};
}

Point point_at(const Opened& open, const Anchor& place) {
  return point_at_length(open.edges[place.edge].stretches[place.stretch], place.along);
}

double closed_along(const OpenEdge& edge, std::size_t stretch, double along) {
  for (std::size_t i = 0; i < stretch; ++i) along += length(edge.stretches[i]);
  return along;
}

double mouth_along(const OpenEdge& edge, std::size_t dart) {
  return closed_along(edge, dart + 1, 0.0);
}

DartSpot slit(Opened& open, const Anchor& place, Point apex, const std::string& name) {
  OpenEdge& edge = open.edges[place.edge];
  const Path whole = edge.stretches[place.stretch];
  const PathPlace cut = place_at_length(whole, place.along);
  const auto here = static_cast<std::ptrdiff_t>(place.stretch);
  edge.stretches[place.stretch] = part_before(whole, cut);
  edge.stretches.insert(edge.stretches.begin() + here + 1, part_after(whole, cut));
  const Point at = point_at(whole, cut);
  Dart dart{name, edge.name, apex, apex, {at, at}, at};
  edge.darts.insert(edge.darts.begin() + here, dart);
  change_anchors(open, [&](Anchor& anchor) {
    if (anchor.edge != place.edge || anchor.stretch < place.stretch) return;
    if (anchor.stretch == place.stretch && anchor.along <= place.along) return;
    if (anchor.stretch == place.stretch) anchor.along -= place.along;
    ++anchor.stretch;
  });
  return {place.edge, place.stretch};
}

void join(Opened& open, DartSpot closed) {
  OpenEdge& edge = open.edges[closed.edge];
  const auto here = static_cast<std::ptrdiff_t>(closed.dart);
  const double before = length(edge.stretches[closed.dart]);
  append(edge.stretches[closed.dart], edge.stretches[closed.dart + 1]);
  edge.stretches[closed.dart] = without_straight_joints(std::move(edge.stretches[closed.dart]));
  edge.stretches.erase(edge.stretches.begin() + here + 1);
  edge.darts.erase(edge.darts.begin() + here);
  change_anchors(open, [&](Anchor& anchor) {
    if (anchor.edge != closed.edge || anchor.stretch <= closed.dart) return;
    if (anchor.stretch == closed.dart + 1) anchor.along += before;
    --anchor.stretch;
  });
}

void set_peak(Opened& open, const std::string& name) {
  const auto found = find_dart(open, name);
  require(found.has_value(), "no such dart");
  const DartSpot spot = *found;
  const Vec seam = into_mouth(open.edges[spot.edge], spot.dart);
  Dart& dart = open.at(spot);
  dart.peak = norm(seam) == 0.0 || dart.legs[0] == dart.legs[1]
                  ? midpoint(dart.legs[0], dart.legs[1])
                  : dart_peak(dart.point, dart.inner_leg(), dart.outer_leg(), seam);
}

}  // namespace blockwright
