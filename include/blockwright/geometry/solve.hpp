#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

namespace blockwright {

/// A place that was tried, and the value of the function there.
struct Tried {
  double x = 0.0;
  double value = 0.0;
};

/// Two tried places on either side of a zero, drawn together by solve_between(). Not for other use.
class Bracket {
 public:
  /// Requires: one value is positive, the other is not.
  Bracket(Tried a, Tried b)
      : newest_(a), other_(b), share_(a.value / (a.value - b.value)), halved_(width()) {}

  [[nodiscard]] double width() const { return std::abs(other_.x - newest_.x); }
  /// The distance of neighbouring doubles here, doubled.
  [[nodiscard]] double rounding() const {
    return 2.0 * std::numeric_limits<double>::epsilon() *
           std::max(std::abs(newest_.x), std::abs(other_.x));
  }
  [[nodiscard]] double best() const {
    return std::abs(newest_.value) < std::abs(other_.value) ? newest_.x : other_.x;
  }
  /// The place to try next, at least half of `accuracy` from either end. No function was found that
  /// needs the bisection after three slow steps; it turns the bound on the cost into a proof.
  [[nodiscard]] double next(double accuracy) const {
    const double least = 0.5 * accuracy / width();
    const double share = share_ > 0.0 && slow_steps_ < 3 ? share_ : 0.5;
    return newest_.x + std::clamp(share, least, 1.0 - least) * (other_.x - newest_.x);
  }
  void narrow(Tried now) {
    const bool same_side = (now.value > 0.0) == (newest_.value > 0.0);
    const Tried left_out = same_side ? newest_ : other_;
    if (!same_side) other_ = newest_;
    newest_ = now;
    share_ = promising_share(newest_, other_, left_out);
    slow_steps_ = width() <= 0.5 * halved_ ? 0 : slow_steps_ + 1;
    if (slow_steps_ == 0) halved_ = width();
  }

 private:
  // How far on the way from a to b an inverse parabola through three places puts the zero; half way
  // where their shape does not promise a good guess.
  static double promising_share(Tried a, Tried b, Tried c) {
    const double place = (a.x - b.x) / (c.x - b.x);
    const double rise = (a.value - b.value) / (c.value - b.value);
    if (!(rise * rise < place && (1.0 - rise) * (1.0 - rise) < 1.0 - place)) return 0.5;
    return a.value / (b.value - a.value) * c.value / (b.value - c.value) +
           (c.x - a.x) / (b.x - a.x) * a.value / (c.value - a.value) * b.value /
               (c.value - b.value);
  }

  Tried newest_, other_;
  double share_;
  double halved_;  // the width when it was last seen to have halved
  int slow_steps_ = 0;
};

/// Where a zero is looked for.
struct Bounds {
  double low = 0.0, high = 0.0;
};

/// The zero in a bracket, within `accuracy` or rounding. Not for other use.
template <class F>
double solve_in(F&& f, Bracket bracket, double accuracy) {
  for (;;) {
    const double reachable = std::max(accuracy, bracket.rounding());
    if (!(bracket.width() > reachable)) return bracket.best();
    const double x = bracket.next(reachable);
    const Tried now{x, f(x)};
    if (now.value == 0.0) return x;
    bracket.narrow(now);
  }
}

/// How far from a guess the zero is looked for first, of the distance of the bounds.
inline constexpr double kFirstStep = 1e-4;

/// Finds where `f` is zero between the bounds, to within `accuracy` in the argument or to
/// rounding, whichever is coarser. `f` has been evaluated at the result.
///
/// Requires: f is continuous; `low` may be the larger. If f has the same sign at both ends, the end
/// where |f| is smaller is returned: the nearest that the bounds allow. Deterministic.
/// Cost: about ten evaluations for a smooth f at any accuracy; the bracket halves at least every
/// fourth step, so never more than 4 log2(|high - low| / accuracy) + 6.
/// Source: T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm", Advances in
/// Engineering Software 28 (1997), 145-149 (from memory); the bound on slow steps is ours.
template <class F>
double solve_between(F&& f, Bounds bounds, double accuracy) {
  const auto [low, high] = bounds;
  const Tried at_low{low, f(low)}, at_high{high, f(high)};
  if (at_low.value == 0.0) return low;
  if (at_high.value == 0.0) return high;
  if ((at_low.value > 0.0) == (at_high.value > 0.0)) {
    return std::abs(at_low.value) <= std::abs(at_high.value) ? low : high;
  }
  return solve_in(f, Bracket(at_low, at_high), accuracy);
}

/// The same for an f that rises, from a guess: about half the evaluations where that is good. The
/// guess may lie out of the bounds.
template <class F>
double solve_near(F&& f, double guess, Bounds bounds, double accuracy) {
  const auto [low, high] = bounds;
  double step = kFirstStep * (high - low);
  const double start = std::clamp(guess, low, high);
  for (Tried at{start, f(start)};; step *= 8.0) {
    if (at.value == 0.0) return at.x;
    const double x = at.value > 0.0 ? std::max(at.x - step, low) : std::min(at.x + step, high);
    if (x == at.x) return x;
    const Tried next{x, f(x)};
    if (next.value == 0.0) return x;
    if ((next.value > 0.0) != (at.value > 0.0)) return solve_in(f, Bracket(at, next), accuracy);
    at = next;
  }
}

}  // namespace blockwright
