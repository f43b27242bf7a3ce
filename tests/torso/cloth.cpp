#include "torso/cloth.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace blockwright::torso {
namespace {

Vec2 vec2(Point p) { return {p.x, p.y}; }

/// An edge with its darts closed: the stretches that are sewn, and the darts between them.
struct ClosedEdge {
  std::vector<Path> stretches;
  std::vector<double> starts;  ///< of each stretch, along the closed edge, mm
  std::vector<const Dart*> darts;
  double length = 0.0;
};

ClosedEdge closed_edge(const Piece& piece, const Edge& edge) {
  ClosedEdge closed;
  for (const Mouth& mouth : mouths_along(piece, edge)) closed.darts.push_back(mouth.dart);
  for (Path& stretch : sewn_stretches(piece, edge)) {
    closed.starts.push_back(closed.length);
    if (!stretch.empty()) closed.length += length(stretch);
    closed.stretches.push_back(std::move(stretch));
  }
  return closed;
}

/// Shares of an edge (0 to 1) where its darts and its mate's are, with parts of about `spacing`
/// between them.
std::vector<double> shares_of(const ClosedEdge& edge, const ClosedEdge* mate, double spacing) {
  std::vector<double> fixed{0.0, 1.0};
  for (const ClosedEdge* side : {&edge, mate}) {
    if (!side) continue;
    for (std::size_t i = 1; i < side->starts.size(); ++i) {
      fixed.push_back(side->starts[i] / side->length);
    }
  }
  std::ranges::sort(fixed);
  std::vector<double> shares{0.0};
  for (std::size_t i = 1; i < fixed.size(); ++i) {
    const double span = fixed[i] - fixed[i - 1];
    if (span * edge.length < 1e-6) continue;
    const int parts = std::max(1, static_cast<int>(std::lround(span * edge.length / spacing)));
    for (int k = 1; k <= parts; ++k) shares.push_back(fixed[i - 1] + span * k / parts);
  }
  return shares;
}

/// The boundary of a piece being collected: points, pairs that darts join, points by edge.
struct Outline {
  std::vector<Vec2> chain;
  std::vector<std::pair<int, int>> joined;
  std::map<std::string, std::vector<std::vector<int>>> edges;  ///< at each share all its points
  std::map<std::string, double> lengths;

  int add(const Vec2& p) {
    // Edges meet: the end of one is the start of the next.
    if (!chain.empty() && (chain.back() - p).norm() < 1e-4)
      return static_cast<int>(chain.size()) - 1;
    if (!chain.empty() && (chain.front() - p).norm() < 1e-4) return 0;
    chain.push_back(p);
    return static_cast<int>(chain.size()) - 1;
  }
};

/// Down one leg to the point, up the other; both legs' points are joined in pairs.
void add_dart(Outline& outline, const Dart& dart, double spacing) {
  const Vec2 in = vec2(dart.legs[0]), point = vec2(dart.point), out = vec2(dart.legs[1]);
  const int parts = std::max(2, static_cast<int>(std::lround((in - point).norm() / spacing)));
  std::vector<int> first;
  for (int k = 0; k <= parts; ++k) first.push_back(outline.add(in + (point - in) * k / parts));
  for (int k = parts - 1; k >= 0; --k) {
    const int second = outline.add(out + (point - out) * k / parts);
    outline.joined.emplace_back(first[static_cast<std::size_t>(k)], second);
  }
}

void add_edge(Outline& outline, const std::string& name, const ClosedEdge& edge,
              const std::vector<double>& shares, double spacing) {
  std::vector<std::vector<int>>& points = outline.edges[name];
  points.assign(shares.size(), {});
  outline.lengths[name] = edge.length;
  for (std::size_t i = 0; i < edge.stretches.size(); ++i) {
    const double from = edge.starts[i];
    const double to = i + 1 < edge.starts.size() ? edge.starts[i + 1] : edge.length;
    for (std::size_t k = 0; k < shares.size(); ++k) {
      const double s = shares[k] * edge.length;
      if (s < from - 1e-5 || s > to + 1e-5) continue;
      if (edge.stretches[i].empty()) continue;
      points[k].push_back(outline.add(vec2(point_at_length(edge.stretches[i], s - from))));
    }
    if (i < edge.darts.size()) add_dart(outline, *edge.darts[i], spacing);
  }
}

/// Which points are one, by their lowest member.
class Joins {
 public:
  explicit Joins(std::size_t count) : of_(count) { std::iota(of_.begin(), of_.end(), 0); }
  int find(int i) const {
    while (of_[static_cast<std::size_t>(i)] != i) i = of_[static_cast<std::size_t>(i)];
    return i;
  }
  void join(int a, int b) {
    a = find(a);
    b = find(b);
    of_[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
  }

 private:
  std::vector<int> of_;
};

constexpr std::array kSewn{"side", "shoulder"};
bool is_sewn(const std::string& name) { return std::ranges::find(kSewn, name) != kSewn.end(); }

ClothPoint point_within(const Cloth& cloth, const FlatMesh& front, const Vec2& p) {
  ClothPoint best;
  double best_least = -1e9;
  for (std::size_t t = 0; t < front.triangles.size(); ++t) {
    const auto& flat = cloth.triangles[t].flat;
    Eigen::Matrix2d sides;
    sides << flat[1] - flat[0], flat[2] - flat[0];
    const Vec2 share = sides.inverse() * (p - flat[0]);
    const std::array<double, 3> shares{1.0 - share.sum(), share.x(), share.y()};
    const double least = *std::ranges::min_element(shares);
    if (least > best_least) {
      best_least = least;
      best = {static_cast<int>(t), shares};
    }
  }
  return best;
}

Outline outline_of(const Piece& piece, const Piece& mate, double spacing) {
  Outline outline;
  for (const Edge& edge : piece.edges) {
    const ClosedEdge closed = closed_edge(piece, edge);
    if (is_sewn(edge.name)) {
      const ClosedEdge other = closed_edge(mate, mate.edge(edge.name));
      // Both sides must be divided alike, so both take the front's length for the number of parts.
      std::vector<double> shares = piece.name == "front" ? shares_of(closed, &other, spacing)
                                                         : shares_of(other, &closed, spacing);
      add_edge(outline, edge.name, closed, shares, spacing);
    } else {
      add_edge(outline, edge.name, closed, shares_of(closed, nullptr, spacing), spacing);
    }
  }
  return outline;
}

/// Outlines, meshes and joins on the way to the sewn cloth; the front comes first.
struct Sewing {
  std::array<Outline, 2> outlines;
  std::array<FlatMesh, 2> meshes;

  [[nodiscard]] int whole(std::size_t piece, int i) const {
    return piece == 0 ? i : i + static_cast<int>(meshes[0].points.size());
  }
};

/// The number of each point once seams and darts are sewn, front's points before the back's.
std::vector<int> sewn_numbers(const Sewing& sewing) {
  const std::size_t count = sewing.meshes[0].points.size() + sewing.meshes[1].points.size();
  Joins joins(count);
  for (std::size_t p = 0; p < 2; ++p) {
    for (const auto& [a, b] : sewing.outlines[p].joined) {
      joins.join(sewing.whole(p, a), sewing.whole(p, b));
    }
  }
  for (const char* name : kSewn) {
    const auto& a = sewing.outlines[0].edges.at(name);
    const auto& b = sewing.outlines[1].edges.at(name);
    if (a.size() != b.size()) throw std::logic_error("seams divided differently");
    for (std::size_t k = 0; k < a.size(); ++k) {
      joins.join(sewing.whole(0, a[k].front()), sewing.whole(1, b[k].front()));
    }
  }
  std::vector<int> numbers(count);
  int next = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const auto root = static_cast<std::size_t>(joins.find(static_cast<int>(i)));
    numbers[i] = root == i ? next++ : numbers[root];
  }
  return numbers;
}

void add_piece(Cloth& cloth, const Sewing& sewing, std::size_t piece, const std::string& name,
               const std::vector<int>& numbers) {
  const FlatMesh& mesh = sewing.meshes[piece];
  const auto id = [&](int i) { return numbers[static_cast<std::size_t>(sewing.whole(piece, i))]; };
  for (std::size_t i = 0; i < mesh.points.size(); ++i) {
    cloth.places[static_cast<std::size_t>(id(static_cast<int>(i)))].emplace_back(
        static_cast<int>(piece), mesh.points[i]);
  }
  for (const auto& t : mesh.triangles) {
    ClothTriangle triangle;
    for (std::size_t k = 0; k < 3; ++k) {
      triangle.corners[k] = id(t[k]);
      triangle.flat[k] = mesh.points[static_cast<std::size_t>(t[k])];
    }
    cloth.triangles.push_back(triangle);
  }
  for (const auto& [edge, points] : sewing.outlines[piece].edges) {
    std::vector<int>& chain = cloth.edges[name + "." + edge];
    for (const std::vector<int>& at : points) chain.push_back(id(at.front()));
    cloth.cut_lengths[name + "." + edge] = sewing.outlines[piece].lengths.at(edge);
    if (edge == "centre_front" || edge == "centre_back") {
      for (const int i : chain) cloth.at_centre[static_cast<std::size_t>(i)] = true;
    }
  }
}

}  // namespace

Cloth sewn_cloth(const Pattern& pattern, double spacing) {
  const Piece &front = pattern.piece("front"), &back = pattern.piece("back");
  Sewing sewing{{outline_of(front, back, spacing), outline_of(back, front, spacing)}, {}};
  for (std::size_t p = 0; p < 2; ++p) {
    sewing.meshes[p] = triangulated(sewing.outlines[p].chain, spacing);
  }
  const std::vector<int> numbers = sewn_numbers(sewing);
  Cloth cloth;
  cloth.points = 1 + *std::ranges::max_element(numbers);
  cloth.places.resize(static_cast<std::size_t>(cloth.points));
  cloth.at_centre.resize(static_cast<std::size_t>(cloth.points), false);
  add_piece(cloth, sewing, 0, front.name, numbers);
  add_piece(cloth, sewing, 1, back.name, numbers);
  cloth.bust_point = point_within(cloth, sewing.meshes[0], vec2(front.darts.front().apex));
  return cloth;
}

}  // namespace blockwright::torso
