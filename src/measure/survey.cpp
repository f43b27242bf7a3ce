// The statistics of the 1988 survey of US Army women, n = 2,208 (Gordon et al. 1989,
// NATICK/TR-89/044, a work of the US Government, public domain), reduced to this catalogue.
//
// How the table was made: mean and covariance of the survey's variables (cm) were computed from its
// rows and carried over to the catalogue by linear combination:
//   side neck to waist  neck to bust point + bust point height - waist height, plus 4 mm: the tape
//                       spans a hollow about 30 mm deep under the bust, sqrt(118^2 + 30^2) - 118.
//                       The depth is ours: it brings the front neckline near the survey's share
//   side length         armpit height - waist height
//   waist to hip        waist height - hip height
//   shoulder slope      asin((side neck height - acromion height) / shoulder length), linearised at
//                       the means; its SD so is 3.83 degrees, 3.85 on the rows; the mean is the
//                       rows'
// Means and SDs are in mm, of the slope in degrees; the correlations are rounded to 5 decimals.
// The waist is the natural indentation, the upper arm girth was taken at the armpit, and the bust
// point width with a caliper, straight from point to point.
#include "survey.hpp"

#include <algorithm>

namespace blockwright {
namespace {

using enum MeasurementName;

constexpr std::size_t kSurveyed = count_filled_in(FillIn::By::Survey);
constexpr std::size_t kPairs = kSurveyed * (kSurveyed + 1) / 2;

// What each grows by for a mm of bust beyond the survey stands last, and beside it what a mm of
// bust makes of it within the survey (computed: its regression on the bust alone), and the second
// source. Flesh goes on growing, bones do not, and lengths over both grow half as fast
// (docs/decisions/013-larger-and-smaller-bodies.md).
constexpr std::array<SurveyVariable, kSurveyed> kVariables{{
    {BustGirth, 907.08, 63.517, 1.00},
    {UpperChestGirth, 887.04, 53.226, 0.82},      // 0.76; ASTM D5585-11e1 sizes 14 to 20: 0.82
    {UnderbustGirth, 769.67, 50.984, 1.00},       // 0.70; the same: 1.00
    {WaistGirth, 725.52, 63.028, 1.00},           // 0.86; EN 13402-3, from memory: 1.00
    {HipGirth, 966.89, 60.183, 0.83},             // 0.67; EN 13402-3, from memory: 0.83
    {NeckBaseGirth, 346.17, 16.330, 0.15},        // 0.15; D5585-11e1 the same
    {ArmscyeGirth, 371.31, 23.054, 0.28},         // 0.28
    {UpperArmGirth, 291.57, 24.439, 0.28},        // 0.31; D5585-95, from memory: 0.28
    {ShoulderLength, 144.65, 10.827, 0.00},       // 0.01; bone
    {ShoulderSlope, 25.74, 3.830, 0.00},          // -0.011 degrees; bone
    {BackWaistLength, 367.31, 25.045, 0.03},      // 0.06; half
    {FrontWaistLength, 311.71, 23.483, 0.03},     // 0.06; half
    {SideNeckToBustPoint, 267.97, 22.291, 0.11},  // 0.22; half
    {SideNeckToWaist, 389.83, 24.470, 0.09},  // 0.13; ours, as the front waist and the bust point
    {BustPointWidth, 184.81, 16.192, 0.10},   // 0.14; ours, less
    {AcrossBack, 376.16, 24.071, 0.10},       // 0.20; half
    {SideLength, 177.11, 21.484, 0.00},       // -0.02
    {ScyeDepth, 185.73, 14.394, 0.04},        // 0.09; half
    {WaistToHip, 218.18, 24.288, 0.00},       // 0.05
    {Stature, 1629.37, 63.604, 0.00},         // 0.22
}};

consteval bool are_the_surveyed() {
  const auto* variable = kVariables.begin();
  for (const MeasurementInfo& entry : kMeasurements) {
    if (entry.fill_in.by == FillIn::By::Survey && (variable++)->name != entry.name) return false;
  }
  return true;
}
static_assert(are_the_surveyed(), "the table of measurements says which are surveyed");

// The lower triangle of the correlations, row by row in the order above.
constexpr std::array<double, kPairs> kCorrelations{
    {1.00000,  0.90126,  1.00000,  0.87484,  0.87075,  1.00000,  0.86300,  0.83381,  0.86252,
     1.00000,  0.70743,  0.71389,  0.67921,  0.73994,  1.00000,  0.59779,  0.64840,  0.58964,
     0.61753,  0.54551,  1.00000,  0.76754,  0.80888,  0.76586,  0.76349,  0.69411,  0.64319,
     1.00000,  0.80048,  0.82463,  0.76296,  0.81758,  0.74311,  0.60223,  0.82496,  1.00000,
     0.07410,  0.15951,  0.07591,  0.03864,  0.11294,  0.11884,  0.00513,  0.04739,  1.00000,
     -0.18164, -0.15104, -0.19238, -0.17959, -0.09815, -0.01466, -0.21159, -0.10127, 0.31063,
     1.00000,  0.14319,  0.13749,  0.17387,  0.07346,  0.17551,  0.19133,  0.18450,  0.04073,
     0.25210,  0.04974,  1.00000,  0.16145,  0.17450,  0.20535,  0.06210,  0.14950,  0.07672,
     0.20206,  0.07046,  0.18262,  0.03601,  0.76298,  1.00000,  0.63628,  0.53801,  0.49302,
     0.54235,  0.51474,  0.40047,  0.53062,  0.52307,  0.22566,  -0.01441, 0.20769,  0.23534,
     1.00000,  0.34793,  0.33223,  0.33931,  0.21866,  0.27810,  0.22979,  0.33045,  0.20815,
     0.24618,  -0.07404, 0.71483,  0.83256,  0.41452,  1.00000,  0.53414,  0.44109,  0.45789,
     0.43854,  0.36765,  0.34038,  0.38059,  0.38843,  0.09566,  -0.06107, 0.06754,  0.10788,
     0.40296,  0.23697,  1.00000,  0.52150,  0.61709,  0.49487,  0.48384,  0.44889,  0.48861,
     0.46573,  0.45741,  0.46464,  0.00121,  0.22431,  0.14938,  0.38680,  0.24254,  0.23776,
     1.00000,  -0.06739, -0.08336, -0.01326, -0.14592, -0.05364, -0.04102, -0.02782, -0.16690,
     -0.01986, -0.22735, 0.73729,  0.75655,  0.02491,  0.74576,  -0.01969, -0.04119, 1.00000,
     0.37956,  0.37387,  0.36356,  0.38636,  0.42079,  0.39128,  0.41544,  0.36907,  0.38302,
     0.24595,  0.51170,  0.19112,  0.37344,  0.22716,  0.17034,  0.36796,  -0.03735, 1.00000,
     0.13068,  0.15602,  0.17426,  0.13710,  0.31183,  0.17770,  0.21845,  0.16227,  0.09165,
     0.00483,  -0.14164, -0.20480, 0.14289,  -0.19937, 0.06517,  0.13634,  -0.29419, 0.22439,
     1.00000,  0.22234,  0.28809,  0.26638,  0.18830,  0.36083,  0.38907,  0.35841,  0.15000,
     0.34493,  0.00420,  0.47727,  0.38542,  0.28226,  0.43504,  0.20556,  0.33677,  0.28528,
     0.39556,  0.37929,  1.00000}};

constexpr double correlation(std::size_t i, std::size_t j) {
  return i < j ? correlation(j, i) : kCorrelations[i * (i + 1) / 2 + j];
}

constexpr std::size_t variable_of(MeasurementName name) {
  const auto* const found = std::ranges::find(kVariables, name, &SurveyVariable::name);
  return static_cast<std::size_t>(found - kVariables.begin());
}

// The surveyed ones, and behind them those that follow another, each counted in the other's SD.
constexpr std::array<SurveyVariable, kSurveySize> make_variables() {
  std::array<SurveyVariable, kSurveySize> all{};
  std::size_t count = 0;
  for (const SurveyVariable& variable : kVariables) all[count++] = variable;
  for (const MeasurementInfo& entry : kMeasurements) {
    if (entry.fill_in.by != FillIn::By::Another) continue;
    const SurveyVariable& other = kVariables[variable_of(entry.fill_in.from)];
    all[count++] = {entry.name, other.mean + entry.fill_in.plus.mm(), other.unit, other.beyond};
  }
  return all;
}

constexpr std::array<SurveyVariable, kSurveySize> kAllVariables = make_variables();

// Where the correlations of a variable stand: one that follows another varies with it.
constexpr std::size_t correlated_as(std::size_t i) {
  return i < kSurveyed ? i : variable_of(info(kAllVariables[i].name).fill_in.from);
}

constexpr SurveyMatrix make_covariance() {
  SurveyMatrix covariance{};
  for (std::size_t i = 0; i < kSurveySize; ++i) {
    for (std::size_t j = 0; j < kSurveySize; ++j) {
      covariance[i][j] = correlation(correlated_as(i), correlated_as(j));
    }
    const double scatter = info(kAllVariables[i].name).fill_in.scatter.mm() / kAllVariables[i].unit;
    covariance[i][i] += scatter * scatter;
  }
  return covariance;
}

constexpr SurveyMatrix kCovariance = make_covariance();

// The orderings that hold on all 2,208 women of the 1988 survey (Gordon et al. 1989,
// NATICK/TR-89/044). Each gap is about half of the smallest difference on every second of its rows
// (beside it): small enough for any body, large enough for a draft. Side length and side neck to
// waist were derived there from heights.
// No measurement is the smaller one here and the larger one there, so no order undoes another.
constexpr Length mm(double value) { return Length::mm(value); }
constexpr std::array<Ordering, 11> kOrderings{{
    {UnderbustGirth, 1.0, UpperChestGirth, mm(10)},       // 21 mm
    {WaistGirth, 1.0, BustGirth, mm(0), Severity::Note},  // 58 mm; older bodies differ
    {WaistGirth, 1.0, HipGirth, mm(0), Severity::Note},   // 83 mm; older bodies differ
    {ScyeDepth, 1.0, BackWaistLength, mm(50)},            // 106 mm
    {ShoulderLength, 2.0, AcrossBack, mm(10)},            // 23 mm
    {UpperArmGirth, 1.0, ArmscyeGirth, mm(18)},           // 36 mm
    {BustPointWidth, 1.0, AcrossBack, mm(55)},            // 110 mm
    {SideLength, 1.0, BackWaistLength, mm(60)},           // 121 mm
    {SideNeckToBustPoint, 1.0, SideNeckToWaist, mm(20)},  // 39 mm
    {FrontWaistLength, 1.0, SideNeckToWaist, mm(20)},     // 38 mm
    {BustPointWidth, 1.0, FrontBustWidth, mm(55)},        // not surveyed: it spans both bust points
}};

// Girths as shares of the bust girth. Of the survey's women 998 in 1,000 have 0.75 to 0.94
// (underbust), 0.69 to 0.92 (waist) and 0.36 to 0.47 (armscye); the others follow from their
// regressions. Widened by our judgement, since bodies beyond the survey vary more.
struct Share {
  MeasurementName girth;
  double least, most;
};
constexpr std::array<Share, 5> kShares{{
    {UpperChestGirth, 0.82, 1.15},
    {UnderbustGirth, 0.72, 0.95},
    {WaistGirth, 0.60, 1.05},
    {ArmscyeGirth, 0.31, 0.52},
    {UpperArmGirth, 0.22, 0.43},
}};

void keep_gap(Body& body, const Ordering& order) {
  auto& smaller = body.measurements[order.smaller];
  auto& larger = body.measurements[order.larger];
  if (!smaller || !larger) return;
  if (!body.taped(order.larger)) {
    larger->value = std::max(larger->value, order.times * smaller->value + order.gap);
  } else if (!body.taped(order.smaller)) {
    smaller->value = std::min(smaller->value, (larger->value - order.gap) / order.times);
  }
}

// Arms reach forward: across front is hardly wider than across back (the draft allows 5 mm on the
// half), nor much narrower: usual is 25 mm, give or take 15. Ours.
constexpr Length kMostFrontOverBack = mm(10), kMostBackOverFront = mm(60);
// What the upper chest leaves between the widths for each arm, of its girth: of 1,000 survey women
// the 10th has 0.124, with across back less 25 mm for across front.
constexpr double kLeastRoomForArm = 0.12;

bool is_estimate(const Body& body, MeasurementName name) {
  return body.has(name) && !body.taped(name);
}

void keep_front_by_back(Body& body) {
  Measure& front = body.measurements[AcrossFront]->value;
  Measure& back = body.measurements[AcrossBack]->value;
  if (is_estimate(body, AcrossFront)) {
    front = std::clamp(front, back - kMostBackOverFront, back + kMostFrontOverBack);
  } else if (is_estimate(body, AcrossBack)) {
    back = std::max(back, front - kMostFrontOverBack);
  }
}

// The widths give way where they are estimates, both alike; else the upper chest does.
void keep_room_for_arms(Body& body) {
  const Measure arms = 2.0 * kLeastRoomForArm * body[UpperArmGirth];
  const Measure missing = body[AcrossFront] + body[AcrossBack] + arms - body[UpperChestGirth];
  if (missing <= Length()) return;
  const bool front = is_estimate(body, AcrossFront), back = is_estimate(body, AcrossBack);
  const Measure each = front && back ? 0.5 * missing : missing;
  if (front) body.measurements[AcrossFront]->value += -each;
  if (back) body.measurements[AcrossBack]->value += -each;
  if (!front && !back && is_estimate(body, UpperChestGirth)) {
    body.measurements[UpperChestGirth]->value += missing;
  }
}

}  // namespace

const std::array<SurveyVariable, kSurveySize>& survey_variables() { return kAllVariables; }

const SurveyMatrix& survey_covariance() { return kCovariance; }

std::optional<std::size_t> survey_place(MeasurementName name) {
  const auto* const found = std::ranges::find(kAllVariables, name, &SurveyVariable::name);
  if (found == kAllVariables.end()) return std::nullopt;
  return static_cast<std::size_t>(found - kAllVariables.begin());
}

const std::array<Ordering, 11>& orderings() { return kOrderings; }

double beyond_survey(Measure bust) {
  constexpr Measure least = mm(740), most = mm(1170);  // survey 711 to 1176
  return (bust - std::clamp(bust, least, most)).number();
}

void keep_shares(Body& body) {
  const Measure bust = body[BustGirth];
  for (const Share& share : kShares) {
    if (!body.has(share.girth) || body.taped(share.girth)) continue;
    Measure& value = body.measurements[share.girth]->value;
    value = std::min(std::max(value, share.least * bust), share.most * bust);
  }
}

void keep_order(Body& body) {
  keep_room_for_arms(body);
  for (const Ordering& order : kOrderings) keep_gap(body, order);
  keep_front_by_back(body);
}

}  // namespace blockwright
