#include "settlement.hpp"

#include "blockwright/geometry/solve.hpp"
#include "rules.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace blockwright {
namespace {

/// Half across front, half across back, take-in.
constexpr std::size_t kUnknowns = 3;
using Unknowns = std::array<double, kUnknowns>;

/// One wish: these parts of the unknowns together should be `is`, in units of what it gives.
struct Equation {
  Unknowns of{};
  double is = 0.0;
  double gives = 1.0;
};

struct Box {
  Unknowns least{}, most{};
};

/// Sum of squares as a quadratic: v'Mv/2 - k'v.
struct Quadratic {
  std::array<Unknowns, kUnknowns> m{};
  Unknowns k{};

  void add(const Equation& e) {
    const double weight = 1.0 / (e.gives * e.gives);
    for (std::size_t i = 0; i < kUnknowns; ++i) {
      for (std::size_t j = 0; j < kUnknowns; ++j) m[i][j] += weight * e.of[i] * e.of[j];
      k[i] += weight * e.of[i] * e.is;
    }
  }
  [[nodiscard]] double slope(const Unknowns& v, std::size_t i) const {
    double sum = -k[i];
    for (std::size_t j = 0; j < kUnknowns; ++j) sum += m[i][j] * v[j];
    return sum;
  }
};

/// Where an unknown is kept.
enum class Kept { Free, AtLeast, AtMost };
using Face = std::array<Kept, kUnknowns>;

/// The least of the quadratic on a face of the box. Each unknown has a square of its own, so that
/// no pivot is null.
Unknowns least_on(Quadratic q, const Box& box, const Face& face) {
  Unknowns v{};
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    if (face[i] == Kept::Free) continue;
    q.m[i] = {};
    q.m[i][i] = 1.0;
    q.k[i] = face[i] == Kept::AtLeast ? box.least[i] : box.most[i];
  }
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    for (std::size_t row = i + 1; row < kUnknowns; ++row) {
      const double factor = q.m[row][i] / q.m[i][i];
      for (std::size_t j = i; j < kUnknowns; ++j) q.m[row][j] -= factor * q.m[i][j];
      q.k[row] -= factor * q.k[i];
    }
  }
  for (std::size_t i = kUnknowns; i-- > 0;) {
    double sum = q.k[i];
    for (std::size_t j = i + 1; j < kUnknowns; ++j) sum -= q.m[i][j] * v[j];
    v[i] = sum / q.m[i][i];
  }
  return v;
}

constexpr double kRounding = 1e-9;

/// True if nothing better lies beside v: inside the box, and pushed against the sides it keeps to.
bool is_least(const Quadratic& q, const Box& box, const Face& face, const Unknowns& v) {
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    if (v[i] < box.least[i] - kRounding || v[i] > box.most[i] + kRounding) return false;
    if (face[i] == Kept::AtLeast && q.slope(v, i) < -kRounding) return false;
    if (face[i] == Kept::AtMost && q.slope(v, i) > kRounding) return false;
  }
  return true;
}

Face next(Face face) {
  for (Kept& kept : face) {
    if (kept == Kept::Free) {
      kept = Kept::AtLeast;
      return face;
    }
    if (kept == Kept::AtLeast) {
      kept = Kept::AtMost;
      return face;
    }
    kept = Kept::Free;
  }
  return face;
}

/// The face that v asks for: kept to each side that it passes.
Face passed_by(const Unknowns& v, const Box& box, Face face) {
  for (std::size_t i = 0; i < kUnknowns; ++i) {
    if (v[i] < box.least[i] - kRounding) face[i] = Kept::AtLeast;
    if (v[i] > box.most[i] + kRounding) face[i] = Kept::AtMost;
  }
  return face;
}

/// The least in a box: on one of its 27 faces, which are tried one after the other unless one of
/// the first guesses is right.
Unknowns least_in(const Quadratic& q, const Box& box) {
  const Face inside{};
  Face face = inside;
  Unknowns v{};
  for (std::size_t guess = 0; guess <= kUnknowns; ++guess) {
    v = least_on(q, box, face);
    if (is_least(q, box, face, v)) return v;
    face = passed_by(v, box, face);
  }
  for (face = next(inside); face != inside; face = next(face)) {
    v = least_on(q, box, face);
    if (is_least(q, box, face, v)) return v;
  }
  for (std::size_t i = 0; i < kUnknowns; ++i) v[i] = std::clamp(v[i], box.least[i], box.most[i]);
  return v;
}

/// What both underarm points reach beyond the bust point when the dart is open: the closure.
double reach(const Network& n, double dart) {
  return n.round - n.bust_point.x * (1.0 - std::cos(dart)) - n.over_bust_point * std::sin(dart);
}

Settled settled_as(const Network& n, double dart, const Unknowns& v) {
  const auto& [front, back, take_in] = v;
  return {front,
          back,
          reach(n, dart) - take_in - back - front * std::cos(dart),
          take_in,
          Angle::radians(dart),
          0.0};
}

/// Bounds that contradict each other leave the lower one.
Box box_of(const Network& n) {
  return {{0.0, std::min(n.least_across_back, n.most_across_back), 0.0},
          {std::max(n.most_across_front, 0.0), n.most_across_back, std::max(n.most_take_in, 0.0)}};
}

/// The linear part, for a given dart. An armhole narrower than the arm gets a further equation.
Settled settled_with(const Network& n, double dart) {
  const double closed = std::cos(dart), all = reach(n, dart);
  const Unknowns width{-closed, -1.0, -1.0};
  Quadratic squares;
  squares.add({{1.0, 0.0, 0.0}, n.across_front.mm, n.across_front.gives});
  squares.add({{0.0, 1.0, 0.0}, n.across_back.mm, n.across_back.gives});
  squares.add({{1.0 - closed, 0.0, -1.0}, n.upper_chest.mm - all, n.upper_chest.gives});
  squares.add({width, n.width.mm - all, n.width.gives});
  squares.add({{0.0, 0.0, 1.0}, 0.0, rules::kTakeInGives});
  const Settled s = settled_as(n, dart, least_in(squares, box_of(n)));
  if (s.width >= n.least_width) return s;
  squares.add({width, n.least_width - all, rules::kLeastWidthGives});
  return settled_as(n, dart, least_in(squares, box_of(n)));
}

double square(double x) { return x * x; }

/// How the sum of squares grows with the dart, halved, from a settlement.
double growth(const Network& n, const Settled& s) {
  const double dart = s.dart.radians();
  double pull = (s.width - n.width.mm) / square(n.width.gives) +
                (s.chest() - n.upper_chest.mm) / square(n.upper_chest.gives);
  if (s.width < n.least_width) pull += (s.width - n.least_width) / square(rules::kLeastWidthGives);
  const double opens =
      (s.across_front - n.bust_point.x) * std::sin(dart) - n.over_bust_point * std::cos(dart);
  return opens * pull + (dart - n.dart.radians()) / square(rules::kBustDartGives.radians());
}

/// How high the open end of the across-front line lies over the bust point.
double open_end(const Network& n, const Settled& s) {
  const double dart = s.dart.radians();
  return n.over_bust_point * std::cos(dart) - (s.across_front - n.bust_point.x) * std::sin(dart);
}

}  // namespace

Settled settled(const Network& n, Angle near) {
  const auto growth_at = [&](double dart) { return growth(n, settled_with(n, dart)); };
  const auto too_low = [&](const Settled& s) { return n.least_over_bust - open_end(n, s); };
  const Bounds darts{rules::kLeastBustDart.radians(), rules::kMostBustDart.radians()};
  const auto solved = [&](auto&& rising, Bounds within) {
    return settled_with(n, solve_near(rising, near.radians(), within, rules::kSolvedAngle));
  };
  Settled alone = solved(growth_at, darts);
  alone.too_low = too_low(alone);
  if (alone.too_low <= 0.0) return alone;
  Settled held = solved([&](double dart) { return too_low(settled_with(n, dart)); },
                        {darts.low, alone.dart.radians()});
  held.too_low = alone.too_low;
  return held;
}

}  // namespace blockwright
