#include "blockwright/pattern/pattern.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/geometry/intersections.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

constexpr double kFlatteningForCrossings = 0.05;
// An edge that meets a leg this near its end only touches it, in mm: a panel seam may run through a
// dart's point.
constexpr double kTouchesLeg = 0.1;

Problem broken(const Piece& piece, const std::string& where, Wording message) {
  return {Severity::Error, "pattern.broken", piece.name + (where.empty() ? "" : "." + where),
          std::move(message), "do not cut this pattern; please report it with the client file"};
}

template <class Items>
std::optional<Problem> find_shared_name(const Piece& piece, const Items& items, const char* what) {
  for (const auto& item : items) {
    if (find_named(items, item.name) == &item) continue;
    return broken(piece, item.name, std::string("two ") + what + " share a name");
  }
  return std::nullopt;
}

std::optional<Problem> find_naming_problem(const Piece& piece) {
  if (auto problem = find_shared_name(piece, piece.edges, "edges")) return problem;
  if (auto problem = find_shared_name(piece, piece.darts, "darts")) return problem;
  if (auto problem = find_shared_name(piece, piece.fullness, "gathers")) return problem;
  if (auto problem = find_shared_name(piece, piece.notches, "notches")) return problem;
  if (auto problem = find_shared_name(piece, piece.balance_lines, "balance lines")) return problem;
  return find_shared_name(piece, piece.landmarks, "landmarks");
}

std::optional<Problem> find_place_problem(const Piece& piece, const std::string& where,
                                          std::initializer_list<Point> points) {
  const auto is_finite = [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); };
  if (std::all_of(points.begin(), points.end(), is_finite)) return std::nullopt;
  return broken(piece, where, "a coordinate is not a number");
}

std::optional<Problem> find_edge_problem(const Piece& piece, const Edge& edge) {
  if (edge.path.empty()) return broken(piece, edge.name, "the edge is empty");
  for (const Curve& curve : edge.path.curves()) {
    const CubicCurve c = as_cubic(curve);
    if (auto problem = find_place_problem(piece, edge.name, {c.p0, c.p1, c.p2, c.p3})) {
      return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> find_outline_problem(const Piece& piece) {
  if (piece.edges.empty()) return broken(piece, "", "the piece has no edges");
  for (const Edge& edge : piece.edges) {
    if (auto problem = find_edge_problem(piece, edge)) return problem;
  }
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Edge& here = piece.edges[i];
    const Edge& next = piece.edges[(i + 1) % piece.edges.size()];
    const double gap = distance(here.path.end(), next.path.start());
    if (gap > kJointTolerance) {
      return broken(piece, here.name, "the outline is open by " + Length::mm(gap));
    }
  }
  const Path outline = flat_outline(piece);
  if (const auto crossing = find_crossing(outline, kFlatteningForCrossings)) {
    return broken(piece, "",
                  "the outline crosses itself at x " + Length::mm(crossing->x) + ", y " +
                      Length::mm(crossing->y));
  }
  if (signed_area(outline) <= 0.0) return broken(piece, "", "the outline runs clockwise");
  return std::nullopt;
}

std::optional<Problem> find_leg_problem(const Piece& piece, const Dart& dart) {
  if (auto problem = find_place_problem(
          piece, dart.name, {dart.apex, dart.point, dart.legs[0], dart.legs[1], dart.peak})) {
    return problem;
  }
  const double off = std::abs(dart.leg() - distance(dart.apex, dart.legs[1]));
  if (off <= kLegTolerance) return std::nullopt;
  return broken(piece, dart.name, "the legs differ by " + Length::mm(off));
}

std::optional<Problem> find_mouth_problem(const Piece& piece, const Dart& dart) {
  const Edge* edge = find_named(piece.edges, dart.edge);
  if (edge == nullptr) return broken(piece, dart.name, "there is no edge '" + dart.edge + "'");
  double along = 0.0;
  for (const Point p : {dart.legs[0], dart.peak, dart.legs[1]}) {
    const NearestOnPath on = nearest(edge->path, p);
    if (on.distance > kOnEdgeTolerance) {
      return broken(piece, dart.name,
                    "the mouth lies " + Length::mm(on.distance) + " off its edge");
    }
    if (on.along < along - kOnEdgeTolerance) {
      return broken(piece, dart.name, "leg, peak and leg do not follow each other along the edge");
    }
    along = on.along;
  }
  return std::nullopt;
}

// Requires: each dart for itself is sound.
std::optional<Problem> find_overlap(const Piece& piece, const Dart& a, const Dart& b) {
  if (a.edge != b.edge) return std::nullopt;
  const Path& path = piece.edge(a.edge).path;
  // How far the one's mouth ends before the other's begins.
  const auto before = [&](const Dart& one, const Dart& other) {
    return nearest(path, other.legs[0]).along - nearest(path, one.legs[1]).along;
  };
  if (std::max(before(a, b), before(b, a)) >= -kOnEdgeTolerance) return std::nullopt;
  return broken(piece, b.name, "its mouth overlaps that of dart '" + a.name + "'");
}

std::optional<Problem> find_dart_problem(const Piece& piece) {
  for (const Dart& dart : piece.darts) {
    if (auto problem = find_leg_problem(piece, dart)) return problem;
    if (auto problem = find_mouth_problem(piece, dart)) return problem;
  }
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (auto problem = find_overlap(piece, piece.darts[j], piece.darts[i])) return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> find_fullness_problem(const Piece& piece, const Fullness& fullness) {
  const Edge* edge = find_named(piece.edges, fullness.edge);
  if (edge == nullptr) {
    return broken(piece, fullness.name, "there is no edge '" + fullness.edge + "'");
  }
  const bool sound = fullness.from >= -kOnEdgeTolerance && fullness.sewn > 0.0 &&
                     fullness.to <= length(edge->path) + kOnEdgeTolerance &&
                     fullness.taken_up() >= -kOnEdgeTolerance;
  if (sound) return std::nullopt;
  return broken(piece, fullness.name,
                "it takes " + Length::mm(fullness.to - fullness.from) + " up to " +
                    Length::mm(fullness.sewn));
}

std::optional<Problem> find_notch_problem(const Piece& piece, const Notch& notch) {
  const Edge* edge = find_named(piece.edges, notch.edge);
  if (edge == nullptr) return broken(piece, notch.name, "there is no edge '" + notch.edge + "'");
  if (!std::isfinite(notch.along)) return broken(piece, notch.name, "its place is not a number");
  const double whole = length(edge->path);
  if (notch.along >= 0.0 && notch.along <= whole + kOnEdgeTolerance) return std::nullopt;
  return broken(
      piece, notch.name,
      "the notch is " + Length::mm(notch.along) + " along an edge of " + Length::mm(whole));
}

// A leg of the dart as it is stitched, but for its ends, where it may touch an edge.
Path between_ends(const Dart& dart, Point leg_end) {
  const Vec leg = leg_end - dart.point;
  const double length = norm(leg);
  if (length <= 2.0 * kTouchesLeg) return {};
  const Vec end = kTouchesLeg / length * leg;
  return Path({Segment{dart.point + end, leg_end - end}});
}

bool cuts(const Edge& edge, const Dart& dart) {
  return std::ranges::any_of(dart.legs, [&](Point leg_end) {
    return !intersections(between_ends(dart, leg_end), edge.path).empty();
  });
}

}  // namespace

const Piece& Pattern::piece(std::string_view name) const {
  const Piece* piece = find_named(pieces, name);
  require(piece != nullptr, "no such piece");
  return *piece;
}

double sewn_length(const Pattern& pattern, const std::vector<EdgeOf>& side) {
  double sum = 0.0;
  for (const auto& [piece_name, edge_name] : side) {
    const Piece& piece = pattern.piece(piece_name);
    sum += sewn_length(piece, piece.edge(edge_name));
  }
  return sum;
}

std::optional<Problem> find_problem(const Piece& piece) {
  if (auto problem = find_naming_problem(piece)) return problem;
  if (auto problem = find_outline_problem(piece)) return problem;
  if (auto problem = find_dart_problem(piece)) return problem;
  for (const Fullness& fullness : piece.fullness) {
    if (auto problem = find_fullness_problem(piece, fullness)) return problem;
  }
  for (const Notch& notch : piece.notches) {
    if (auto problem = find_notch_problem(piece, notch)) return problem;
  }
  return std::nullopt;
}

std::optional<CutDart> find_cut_dart(const Piece& piece) {
  for (const Dart& dart : piece.darts) {
    for (const Edge& edge : piece.edges) {
      if (cuts(edge, dart)) return CutDart{edge.name, dart.name};
    }
  }
  return std::nullopt;
}

}  // namespace blockwright
