#include "torso/relax.hpp"

#include <Eigen/LU>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>
#include <map>

namespace blockwright::torso {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Vector = Eigen::VectorXd;
using Block = Eigen::Matrix3d;

std::size_t idx(int i) { return static_cast<std::size_t>(i); }
Vec3 at(const Vector& x, int i) { return x.segment<3>(3 * i); }

/// The lower half of a symmetric matrix of 3 x 3 blocks with fixed places.
class BlockMatrix {
 public:
  BlockMatrix(int points, const std::vector<std::pair<int, int>>& pairs) {
    std::vector<Eigen::Triplet<double>> entries;
    for (const auto& [i, j] : pairs) {
      for (int r = 0; r < 3; ++r) {
        for (int c = 0; c < 3; ++c) {
          if (3 * i + r >= 3 * j + c) entries.emplace_back(3 * i + r, 3 * j + c, 0.0);
        }
      }
    }
    matrix_.resize(3 * points, 3 * points);
    matrix_.setFromTriplets(entries.begin(), entries.end());
    matrix_.makeCompressed();
  }

  void clear() { std::fill_n(matrix_.valuePtr(), matrix_.nonZeros(), 0.0); }

  /// Where a block's three columns begin among the values. Requires: i >= j.
  [[nodiscard]] std::array<int, 3> place(int i, int j) const {
    std::array<int, 3> starts{};
    for (int c = 0; c < 3; ++c) {
      const int row = i == j ? 3 * i + c : 3 * i;
      const int* const first = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[3 * j + c];
      const int* const last = matrix_.innerIndexPtr() + matrix_.outerIndexPtr()[3 * j + c + 1];
      starts[idx(c)] =
          static_cast<int>(std::lower_bound(first, last, row) - matrix_.innerIndexPtr());
    }
    return starts;
  }

  void add(const std::array<int, 3>& place, bool diagonal, const Block& block) {
    double* const values = matrix_.valuePtr();
    for (int c = 0; c < 3; ++c) {
      const int first = diagonal ? c : 0;
      for (int r = first; r < 3; ++r) values[place[idx(c)] + r - first] += block(r, c);
    }
  }

  [[nodiscard]] const Matrix& matrix() const { return matrix_; }

 private:
  Matrix matrix_;
};

struct Triangle {
  std::array<int, 3> corners;
  std::array<Vec2, 3> slope;  ///< of the corners' shares, 1/mm
  double area = 0.0;
  std::array<std::array<int, 3>, 6> places{};  ///< of the blocks 00 10 11 20 21 22
};

/// Two triangles over a common edge that resist being folded: quadratic bending of a flat sheet
/// (Bergou and others 2006, from memory).
struct Hinge {
  std::array<int, 4> corners;
  Eigen::Vector4d factors;  ///< energy is half of the bending stiffness times |sum factor x|^2
  std::array<std::array<int, 3>, 10> places{};
};

/// The cloth's energy on a body, with its slope and a positive curvature.
class Sheet {
 public:
  Sheet(const Cloth& cloth, const Torso& body, const ClothKind& kind)
      : body_(body),
        kind_(kind),
        at_centre_(cloth.at_centre),
        count_(cloth.points),
        area_(idx(cloth.points), 0.0),
        blocks_(make(cloth)) {
    for (Triangle& t : triangles_) {
      std::size_t n = 0;
      for (std::size_t a = 0; a < 3; ++a) {
        for (std::size_t b = 0; b <= a; ++b) t.places[n++] = ordered(t.corners[a], t.corners[b]);
      }
    }
    for (Hinge& h : hinges_) {
      std::size_t n = 0;
      for (std::size_t a = 0; a < 4; ++a) {
        for (std::size_t b = 0; b <= a; ++b) h.places[n++] = ordered(h.corners[a], h.corners[b]);
      }
    }
    for (int i = 0; i < count_; ++i) diagonal_.push_back(blocks_.place(i, i));
  }

  double bending = 1.0;  ///< times the cloth's own stiffness

  double energy(const Vector& x) const {
    double sum = 0.0;
    for (const Triangle& t : triangles_) sum += stretch_energy(t, x);
    for (const Hinge& h : hinges_) {
      sum += 0.5 * bending * kind_.bending * bend(h, x).squaredNorm();
    }
    for (int i = 0; i < count_; ++i) {
      sum += kind_.weight * area_[idx(i)] * x[3 * i + 2];
      const double d = body_.distance(at(x, i));
      if (d < 0.0) sum += 0.5 * kind_.contact * area_[idx(i)] * d * d;
    }
    return sum;
  }

  /// Slope of the energy; fills the matrix. `hold` is added to each point's diagonal.
  Vector slope(const Vector& x, double hold) {
    Vector g = Vector::Zero(3 * count_);
    blocks_.clear();
    for (const Triangle& t : triangles_) add_stretch(t, x, g);
    for (const Hinge& h : hinges_) add_bend(h, x, g);
    Vec3 out;
    for (int i = 0; i < count_; ++i) {
      g[3 * i + 2] += kind_.weight * area_[idx(i)];
      const double d = body_.distance(at(x, i), out);
      Block block = hold * area_[idx(i)] * Block::Identity();
      if (d < 0.0) {
        const double k = kind_.contact * area_[idx(i)];
        g.segment<3>(3 * i) += k * d * out;
        block += k * out * out.transpose();
      }
      if (at_centre_[idx(i)]) block(0, 0) += 1e9;
      blocks_.add(diagonal_[idx(i)], true, block);
      if (at_centre_[idx(i)]) g[3 * i] = 0.0;
    }
    return g;
  }

  [[nodiscard]] const Matrix& matrix() const { return blocks_.matrix(); }

 private:
  BlockMatrix make(const Cloth& cloth) {
    std::map<std::pair<int, int>, std::vector<std::pair<int, int>>> beside;  // edge: triangle, side
    std::vector<std::pair<int, int>> pairs;
    const auto pair = [&](int a, int b) { pairs.emplace_back(std::max(a, b), std::min(a, b)); };
    for (std::size_t n = 0; n < cloth.triangles.size(); ++n) {
      const ClothTriangle& from = cloth.triangles[n];
      Eigen::Matrix2d sides;
      sides << from.flat[1] - from.flat[0], from.flat[2] - from.flat[0];
      const Eigen::Matrix2d inverse = sides.inverse();
      Triangle t{from.corners, {}, 0.5 * sides.determinant()};
      t.slope[1] = inverse.row(0).transpose();
      t.slope[2] = inverse.row(1).transpose();
      t.slope[0] = -t.slope[1] - t.slope[2];
      triangles_.push_back(t);
      for (std::size_t k = 0; k < 3; ++k) {
        area_[idx(t.corners[k])] += t.area / 3.0;
        const int a = t.corners[k], b = t.corners[(k + 1) % 3];
        pair(a, a);
        pair(a, b);
        beside[{std::min(a, b), std::max(a, b)}].emplace_back(static_cast<int>(n),
                                                              static_cast<int>(k));
      }
    }
    for (const auto& [edge, sides] : beside) {
      if (sides.size() != 2) continue;
      hinges_.push_back(hinge(cloth, sides[0], sides[1]));
      for (const int a : hinges_.back().corners) {
        for (const int b : hinges_.back().corners) pair(a, b);
      }
    }
    return {cloth.points, pairs};
  }

  static Hinge hinge(const Cloth& cloth, std::pair<int, int> one, std::pair<int, int> two) {
    // Corners: the edge's ends as the first triangle meets them, its far corner, the other's.
    const auto corner = [&](std::pair<int, int> side, int k) {
      return (idx(side.second) + idx(k)) % 3;
    };
    const ClothTriangle &a = cloth.triangles[idx(one.first)], &b = cloth.triangles[idx(two.first)];
    Hinge h{{a.corners[corner(one, 0)], a.corners[corner(one, 1)], a.corners[corner(one, 2)],
             b.corners[corner(two, 2)]},
            {}};
    const auto cot = [](const Vec2& u, const Vec2& v) {
      return u.dot(v) / std::max(std::abs(u.x() * v.y() - u.y() * v.x()), 1e-6);
    };
    // Cotangents at both ends of the edge, in each triangle as cut. In the second the edge runs
    // the other way.
    const auto cots = [&](const ClothTriangle& t, std::pair<int, int> side, bool back) {
      const Vec2 p = t.flat[corner(side, 0)], q = t.flat[corner(side, 1)];
      const Vec2 far = t.flat[corner(side, 2)];
      const double at_p = cot(q - p, far - p), at_q = cot(p - q, far - q);
      return back ? Vec2(at_q, at_p) : Vec2(at_p, at_q);
    };
    const bool runs_back = b.corners[corner(two, 0)] == h.corners[1];
    const Vec2 ca = cots(a, one, false), cb = cots(b, two, runs_back);
    const auto area = [](const ClothTriangle& t) {
      Eigen::Matrix2d sides;
      sides << t.flat[1] - t.flat[0], t.flat[2] - t.flat[0];
      return 0.5 * sides.determinant();
    };
    h.factors << ca[1] + cb[1], ca[0] + cb[0], -ca[0] - ca[1], -cb[0] - cb[1];
    h.factors *= std::sqrt(3.0 / (area(a) + area(b)));
    return h;
  }

  [[nodiscard]] std::array<int, 3> ordered(int a, int b) const {
    return blocks_.place(std::max(a, b), std::min(a, b));
  }

  struct Strain {
    Vec3 u, v;  ///< what becomes of a mm across and along the grain
    double across, along, sheared;
  };
  static Strain strain(const Triangle& t, const Vector& x) {
    Strain s{Vec3::Zero(), Vec3::Zero(), 0, 0, 0};
    for (std::size_t k = 0; k < 3; ++k) {
      const Vec3 p = at(x, t.corners[k]);
      s.u += t.slope[k].x() * p;
      s.v += t.slope[k].y() * p;
    }
    s.across = 0.5 * (s.u.squaredNorm() - 1.0);
    s.along = 0.5 * (s.v.squaredNorm() - 1.0);
    s.sheared = s.u.dot(s.v);
    return s;
  }
  [[nodiscard]] double stiffness(double part) const {
    return part > 0.0 ? kind_.stretch : kind_.stretch * kind_.pushed;
  }

  double stretch_energy(const Triangle& t, const Vector& x) const {
    const Strain s = strain(t, x);
    return 0.5 * t.area *
           (stiffness(s.across) * s.across * s.across + stiffness(s.along) * s.along * s.along +
            kind_.shear * s.sheared * s.sheared);
  }

  void add_stretch(const Triangle& t, const Vector& x, Vector& g) {
    const Strain s = strain(t, x);
    const double ku = t.area * stiffness(s.across), kv = t.area * stiffness(s.along);
    const double ks = t.area * kind_.shear;
    std::array<Vec3, 3> du, dv, ds;
    for (std::size_t k = 0; k < 3; ++k) {
      du[k] = t.slope[k].x() * s.u;
      dv[k] = t.slope[k].y() * s.v;
      ds[k] = t.slope[k].x() * s.v + t.slope[k].y() * s.u;
      g.segment<3>(3 * t.corners[k]) +=
          ku * s.across * du[k] + kv * s.along * dv[k] + ks * s.sheared * ds[k];
    }
    std::size_t n = 0;
    for (std::size_t a = 0; a < 3; ++a) {
      for (std::size_t b = 0; b <= a; ++b, ++n) {
        Block block = ku * du[a] * du[b].transpose() + kv * dv[a] * dv[b].transpose() +
                      ks * ds[a] * ds[b].transpose();
        const double tense = ku * std::max(s.across, 0.0) * t.slope[a].x() * t.slope[b].x() +
                             kv * std::max(s.along, 0.0) * t.slope[a].y() * t.slope[b].y();
        block.diagonal().array() += tense;
        put(t.corners[a], t.corners[b], t.places[n], block);
      }
    }
  }

  static Vec3 bend(const Hinge& h, const Vector& x) {
    Vec3 sum = Vec3::Zero();
    for (int k = 0; k < 4; ++k) sum += h.factors[k] * at(x, h.corners[idx(k)]);
    return sum;
  }

  void add_bend(const Hinge& h, const Vector& x, Vector& g) {
    const Vec3 sum = bend(h, x);
    const double k = bending * kind_.bending;
    std::size_t n = 0;
    for (int a = 0; a < 4; ++a) {
      g.segment<3>(3 * h.corners[idx(a)]) += k * h.factors[a] * sum;
      for (int b = 0; b <= a; ++b, ++n) {
        put(h.corners[idx(a)], h.corners[idx(b)], h.places[n],
            k * h.factors[a] * h.factors[b] * Block::Identity());
      }
    }
  }

  void put(int a, int b, const std::array<int, 3>& place, const Block& block) {
    if (a >= b) {
      blocks_.add(place, a == b, block);
    } else {
      blocks_.add(place, false, block.transpose());
    }
  }

  const Torso& body_;
  ClothKind kind_;
  std::vector<bool> at_centre_;
  int count_;
  std::vector<double> area_;
  std::vector<Triangle> triangles_;
  std::vector<Hinge> hinges_;
  BlockMatrix blocks_;
  std::vector<std::array<int, 3>> diagonal_;
};

/// The point at that length along a chain from its start, or beyond its end straight on.
Vec2 along(const std::vector<Vec2>& chain, double s) {
  std::size_t i = 1;
  double part = (chain[1] - chain[0]).norm();
  while (i + 1 < chain.size() && s > part) {
    s -= part;
    ++i;
    part = (chain[i] - chain[i - 1]).norm();
  }
  return chain[i - 1] + s / part * (chain[i] - chain[i - 1]);
}

/// Wraps the pieces round the body at their heights; sewn points lie between their places.
Vector put_on(const Cloth& cloth, const Torso& body, const Start& start) {
  constexpr double kStep = 10.0, kLowest = -60.0;
  const double top = body.landmarks().shoulder_point.z();
  std::vector<std::vector<Vec2>> sections;
  for (double z = kLowest; z <= top + kStep; z += kStep) {
    sections.push_back(body.trunk_section(z, start.off));
  }
  Vector x(3 * cloth.points);
  for (int i = 0; i < cloth.points; ++i) {
    Vec3 sum = Vec3::Zero();
    for (const auto& [piece, flat] : cloth.places[idx(i)]) {
      const double level = std::clamp((flat.y() - kLowest) / kStep, 0.0,
                                      static_cast<double>(sections.size()) - 1.001);
      const auto low = static_cast<std::size_t>(level);
      Vec2 ends[2];
      for (std::size_t k = 0; k < 2; ++k) {
        std::vector<Vec2> section = sections[low + k];
        if (piece == 1) std::ranges::reverse(section);
        ends[k] = along(section, flat.x());
      }
      const double t = level - static_cast<double>(low);
      const Vec2 across = (1.0 - t) * ends[0] + t * ends[1];
      sum += Vec3(across.x(), across.y(), flat.y() + start.lifted);
    }
    x.segment<3>(3 * i) = sum / static_cast<double>(cloth.places[idx(i)].size());
    if (cloth.at_centre[idx(i)]) x[3 * i] = 0.0;
  }
  return x;
}

}  // namespace

Relaxed relaxed(const Cloth& cloth, const Torso& body, const ClothKind& kind, const Start& start) {
  constexpr int kMostSteps = 400;
  Sheet sheet(cloth, body, kind);
  Vector x = put_on(cloth, body, start);
  Eigen::SimplicialLLT<Matrix, Eigen::Lower> solver;
  solver.analyzePattern(sheet.matrix());
  // Newton's steps, held back while they fail. Stiff in bending at first, so that no folds are left
  // from putting the cloth on.
  double hold = 1e-2;
  sheet.bending = 100.0;
  double energy = sheet.energy(x);
  Relaxed result;
  int small = 0;
  for (int step = 0; step < kMostSteps; ++step) {
    const Vector g = sheet.slope(x, hold);
    solver.factorize(sheet.matrix());
    Vector move = -solver.solve(g);
    const double longest = move.cwiseAbs().maxCoeff();
    if (longest > 20.0) move *= 20.0 / longest;
    double share = 1.0, next = 0.0;
    const double falls = g.dot(move);
    for (int halving = 0; halving < 12; ++halving, share *= 0.5) {
      next = sheet.energy(x + share * move);
      if (next <= energy + 1e-4 * share * falls) break;
    }
    result.last_move = share * move.cwiseAbs().maxCoeff();
    if (next < energy) {
      x += share * move;
      energy = next;
    }
    hold =
        share > 0.6 ? std::max(0.5 * hold, 1e-7) : std::min(hold * (share < 0.2 ? 4.0 : 1.0), 1e-1);
    result.steps = step + 1;
    if (sheet.bending > 1.0 && (step % 8 == 7 || result.last_move < 0.5)) {
      sheet.bending = std::max(1.0, 0.5 * sheet.bending);
      energy = sheet.energy(x);
      continue;
    }
    small = result.last_move < 0.03 ? small + 1 : 0;
    if (sheet.bending == 1.0 && small >= 3) break;
  }
  result.energy = energy;
  for (int i = 0; i < cloth.points; ++i) result.at.push_back(at(x, i));
  return result;
}

}  // namespace blockwright::torso
