#include "arc_length.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

// A node of a Gauss-Legendre rule on [-1, 1] and its weight; its mirror image -node has the same
// weight, so a rule of n points is kept as n / 2 of these.
struct GaussPair {
  double node = 0.0;
  double weight = 0.0;
};

// Zeros of the Legendre polynomials and their weights, by Newton's method with 40 digits; they
// agree with Abramowitz & Stegun, table 25.4, where that table has them.
constexpr std::array<GaussPair, 4> kGauss8 = {{
    {0.183434642495649805, 0.362683783378361983},
    {0.525532409916328986, 0.313706645877887287},
    {0.796666477413626740, 0.222381034453374471},
    {0.960289856497536232, 0.101228536290376259},
}};
constexpr std::array<GaussPair, 8> kGauss16 = {{
    {0.095012509837637440, 0.189450610455068496},
    {0.281603550779258913, 0.182603415044923589},
    {0.458016777657227386, 0.169156519395002538},
    {0.617876244402643748, 0.149595988816576732},
    {0.755404408355003034, 0.124628971255533872},
    {0.865631202387831744, 0.095158511682492785},
    {0.944575023073232576, 0.062253523938647893},
    {0.989400934991649933, 0.027152459411754095},
}};
constexpr std::array<GaussPair, 12> kGauss24 = {{
    {0.064056892862605626, 0.127938195346752157},
    {0.191118867473616309, 0.125837456346828296},
    {0.315042679696163374, 0.121670472927803391},
    {0.433793507626045138, 0.115505668053725601},
    {0.545421471388839536, 0.107444270115965635},
    {0.648093651936975569, 0.097618652104113888},
    {0.740124191578554364, 0.086190161531953276},
    {0.820001985973902922, 0.073346481411080306},
    {0.886415527004401034, 0.059298584915436781},
    {0.938274552002732759, 0.044277438817419806},
    {0.974728555971309498, 0.028531388628933663},
    {0.995187219997021360, 0.012341229799987200},
}};
constexpr std::array<GaussPair, 16> kGauss32 = {{
    {0.048307665687738316, 0.096540088514727801},
    {0.144471961582796493, 0.095638720079274859},
    {0.239287362252137075, 0.093844399080804566},
    {0.331868602282127650, 0.091173878695763885},
    {0.421351276130635345, 0.087652093004403811},
    {0.506899908932229390, 0.083311924226946755},
    {0.587715757240762329, 0.078193895787070306},
    {0.663044266930215201, 0.072345794108848506},
    {0.732182118740289680, 0.065822222776361847},
    {0.794483795967942407, 0.058684093478535547},
    {0.849367613732569970, 0.050998059262376176},
    {0.896321155766052124, 0.042835898022226681},
    {0.934906075937739689, 0.034273862913021433},
    {0.964762255587506431, 0.025392065309262059},
    {0.985611511545268335, 0.016274394730905671},
    {0.997263861849481564, 0.007018610009470097},
}};

// Deeper than this the parts are below rounding; nothing gets there but numbers that are not
// finite.
constexpr int kDeepest = 48;
// The widest Bernstein ellipse that is worth asking for: the 16-point rule is exact in it.
constexpr double kWidestEllipse = 8.0;

// The derivative of a cubic over a stretch of it, as a polynomial in z from -1 to 1; a Vec stands
// for the complex number x + i y.
struct Hodograph {
  Vec constant, linear, square;
};

Hodograph hodograph_of(const CubicCurve& c) {
  const Vec d0 = c.p1 - c.p0, d1 = c.p2 - c.p1, d2 = c.p3 - c.p2;
  return {0.375 * (d0 + 2.0 * d1 + d2), 0.75 * (d2 - d0), 0.375 * (d0 - 2.0 * d1 + d2)};
}

// The stretch of `w` from middle - half to middle + half, as a hodograph of its own.
Hodograph part_of(const Hodograph& w, double middle, double half) {
  return {half * (w.constant + middle * (w.linear + middle * w.square)),
          half * half * (w.linear + 2.0 * middle * w.square), half * half * half * w.square};
}

Vec product(Vec a, Vec b) { return {a.x * b.x - a.y * b.y, a.x * b.y + a.y * b.x}; }

Vec square_root(Vec v) {
  const double larger = std::sqrt(0.5 * (norm(v) + std::abs(v.x)));
  if (larger == 0.0) return {};
  const double smaller = 0.5 * v.y / larger;
  return v.x >= 0.0 ? Vec{larger, smaller} : Vec{std::abs(smaller), std::copysign(larger, v.y)};
}

// Square of the sum of a point's distances from -1 and 1; the point is the fraction above / below.
double squared_focal_sum(Vec above, Vec below) {
  const double sa = dot(above, above), sb = dot(below, below);
  const Vec to_one = above - below, to_minus_one = above + below;
  return 2.0 * (sa + sb + std::sqrt(dot(to_one, to_one) * dot(to_minus_one, to_minus_one))) / sb;
}

// Sum of the half axes of the largest Bernstein ellipse without a zero of `w`, at most the widest.
double analytic_ellipse(const Hodograph& w) {
  Vec root = square_root(product(w.linear, w.linear) - 4.0 * product(w.constant, w.square));
  if (dot(w.linear, root) < 0.0) root = -root;
  const Vec q = -0.5 * (w.linear + root);  // the zeros are q / square and constant / q
  double sum = (kWidestEllipse + 1.0 / kWidestEllipse) * (kWidestEllipse + 1.0 / kWidestEllipse);
  // A zero that does not exist gives 0 / 0, which is never smaller.
  if (const double one = squared_focal_sum(q, w.square); one < sum) sum = one;
  if (const double other = squared_focal_sum(w.constant, q); other < sum) sum = other;
  return sum > 4.0 ? 0.5 * (std::sqrt(sum) + std::sqrt(sum - 4.0)) : 1.0;
}

// At least the length of v and at most half as much again.
double rough_norm(Vec v) { return std::abs(v.x) + std::abs(v.y); }

double largest_speed(const Hodograph& w, double z) {
  return rough_norm(w.constant) + z * (rough_norm(w.linear) + z * rough_norm(w.square));
}

template <std::size_t kPairs>
double quadrature(const Hodograph& w, const std::array<GaussPair, kPairs>& rule) {
  double sum = 0.0;
  for (const GaussPair& at : rule) {
    const Vec even = w.constant + at.node * at.node * w.square;
    const Vec odd = at.node * w.linear;
    sum += at.weight * (norm(even + odd) + norm(even - odd));
  }
  return sum;
}

// Length of the stretch within `share`. A stretch shorter than `negligible` is good enough as it
// is: only the two stretches on either side of a cusp are, at most four in all.
double length_of(const Hodograph& w, double share, double negligible, int depth) {
  const double rho = analytic_ellipse(w);
  const double q = 1.0 / (rho * rho), q2 = q * q, q4 = q2 * q2, q8 = q4 * q4, q7 = q4 * q2 * q;
  const double bound = 64.0 / 15.0 * largest_speed(w, 0.5 * (rho + 1.0 / rho)) / (1.0 - q);
  if (bound * q7 <= share) return quadrature(w, kGauss8);
  if (bound * q7 * q8 <= share) return quadrature(w, kGauss16);
  if (bound * q7 * q8 * q8 <= share) return quadrature(w, kGauss24);
  if (bound * q7 * q8 * q8 * q8 <= share) return quadrature(w, kGauss32);
  const double longest = 2.0 * largest_speed(w, 1.0);
  if (!(longest > negligible) || depth >= kDeepest) return quadrature(w, kGauss8);
  return length_of(part_of(w, -0.5, 0.5), 0.5 * share, negligible, depth + 1) +
         length_of(part_of(w, 0.5, 0.5), 0.5 * share, negligible, depth + 1);
}

}  // namespace

double arc_length(const CubicCurve& curve, Stretch stretch, double accuracy) {
  const auto [from, to] = stretch;
  Hodograph w = hodograph_of(curve);
  const double size = largest_speed(w, 1.0);
  if (from != 0.0 || to != 1.0) w = part_of(w, from + to - 1.0, to - from);
  const double reachable = std::max(accuracy, 4.0 * std::numeric_limits<double>::epsilon() * size);
  const double sum = length_of(w, 0.5 * reachable, 0.125 * reachable, 0);
  return to < from ? -sum : sum;
}

double parameter_at_length(const Measured& measured, double s) {
  const auto [curve, whole] = measured;
  constexpr double accuracy = kLengthAccuracy;
  if (!(s > 0.0 && whole > 0.0)) return 0.0;  // nor do numbers that are not finite get further
  if (s >= whole) return 1.0;
  const auto* c = std::get_if<CubicCurve>(&curve);
  if (c == nullptr) return s / whole;
  // Newton's method inside a bracket; only the stretch of each step is measured anew.
  double low = 0.0, high = 1.0, t = s / whole;
  double excess = arc_length(*c, {0.0, t}, 0.125 * accuracy) - s;
  for (int step = 0; step < 80 && std::abs(excess) > 0.5 * accuracy; ++step) {
    (excess > 0.0 ? high : low) = t;
    const double newton = t - excess / norm(derivative_at(curve, t));
    const double next = newton > low && newton < high ? newton : 0.5 * (low + high);
    excess += arc_length(*c, {t, next}, 0.125 * accuracy);
    t = next;
  }
  return t;
}

}  // namespace blockwright
