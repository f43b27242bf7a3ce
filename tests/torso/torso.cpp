#include "torso/torso.hpp"

#include "torso/tape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace blockwright::torso {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr int kSectionRays = 96;

// Proportions: regressions on the bust girth of the 2,208 women of the 1988 survey (Gordon et al.
// 1989, NATICK/TR-89/044), computed from it, mm. What has no regression is ours, set so that the
// tapes of the middle torso lie within the survey's scatter.
double survey_breadth(double bust) { return 43.1 + 0.2608 * bust; }
double survey_bust_point_width(double bust) { return 61.3 + 0.1362 * bust; }
double survey_bust_below_neck(double bust) { return 121.3 + 0.1111 * bust; }
double survey_armscye(double bust) { return 118.6 + 0.2786 * bust; }
/// Upper chest over underbust: a little muscle and a third of the cup. Ours; 118 mm for the
/// survey's mean cup of 137, as surveyed.
double upper_chest(double underbust, double cup) { return underbust + 70.0 + 0.35 * cup; }

double smooth_min(double a, double b, double blend) {
  const double h = std::max(blend - std::abs(a - b), 0.0) / blend;
  return std::min(a, b) - 0.25 * h * h * blend;
}
double smooth_max(double a, double b, double blend) { return -smooth_min(-a, -b, blend); }

/// Like (x^n + y^n)^(1/n) for x, y >= 0.
double super_norm(double x, double y, double n) {
  const double most = std::max(x, y);
  if (most <= 0.0) return 0.0;
  return most * std::pow(std::pow(x / most, n) + std::pow(y / most, n), 1.0 / n);
}

double superellipse_girth(double a, double b, double n) {
  double girth = 0.0;
  Vec2 last(a, 0.0);
  for (int i = 1; i <= 90; ++i) {
    const double t = i * kDegree;
    const Vec2 ray(std::cos(t), std::sin(t));
    const Vec2 at = ray / super_norm(ray.x() / a, ray.y() / b, n);
    girth += 4.0 * (at - last).norm();
    last = at;
  }
  return girth;
}

/// The argument in [low, high] where a rising function reaches the target.
template <class Rising>
double argument_for(double target, double low, double high, Rising&& rising) {
  for (int i = 0; i < 40; ++i) {
    const double middle = 0.5 * (low + high);
    (rising(middle) < target ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double depth_for(double girth, double half_width, double n) {
  return 2.0 * argument_for(girth, 20.0, 600.0,
                            [&](double b) { return superellipse_girth(half_width, b, n); });
}

}  // namespace

Profile::Profile(std::vector<Vec2> height_and_value) : points_(std::move(height_and_value)) {
  // Fritsch and Carlson's monotone slopes, by the harmonic mean (from memory).
  const std::size_t n = points_.size();
  slopes_.assign(n, 0.0);
  for (std::size_t i = 1; i + 1 < n; ++i) {
    const Vec2 before = points_[i] - points_[i - 1], after = points_[i + 1] - points_[i];
    const double a = before.y() / before.x(), b = after.y() / after.x();
    if (a * b > 0.0) slopes_[i] = 2.0 * a * b / (a + b);
  }
  slopes_.front() = (points_[1].y() - points_[0].y()) / (points_[1].x() - points_[0].x());
}

double Profile::at(double z) const {
  if (z <= points_.front().x()) return points_.front().y();
  if (z >= points_.back().x()) return points_.back().y();
  std::size_t i = 0;
  while (z > points_[i + 1].x()) ++i;
  const double span = points_[i + 1].x() - points_[i].x();
  const double t = (z - points_[i].x()) / span, u = 1.0 - t;
  return u * u * (1.0 + 2.0 * t) * points_[i].y() + t * t * (3.0 - 2.0 * t) * points_[i + 1].y() +
         span * t * u * (u * slopes_[i] - t * slopes_[i + 1]);
}

Torso::Torso(const TorsoForm& form) : form_(form) {
  set_levels();
  match_girths();
  match_neck();
}

void Torso::set_levels() {
  const double height = form_.back_height;
  const double frame = form_.bust - form_.cup + 137.0;
  neck_width_ = 0.148 * form_.neck_base;
  neck_depth_ = 1.06 * neck_width_;
  z_neck_side_ = height - 11.0;
  z_armpit_ = 0.505 * height;
  z_front_neck_ = height - 78.0;
  z_shoulder_ = z_neck_side_ - form_.shoulder_length * std::sin(form_.slope * kDegree);
  const double below = survey_bust_below_neck(form_.bust) + 0.15 * (form_.cup - 137.0);
  z_bust_ = std::clamp(z_neck_side_ - below, 78.0, z_armpit_ - 30.0);
  x_bust_ = 0.5 * survey_bust_point_width(0.5 * (form_.bust + frame));
  breast_ = 40.0 + 0.19 * form_.cup;
  z_underbust_ = z_bust_ - std::min(0.9 * breast_, z_bust_ - 28.0);
  lean_ = 10.0 + (form_.back_curve - 30.0) * 0.625;
  const double underbust = form_.bust - form_.cup;
  const double chest = upper_chest(underbust, form_.cup);
  const double half = 0.505 * survey_breadth(frame);
  waist_depth_ = depth_for(form_.waist, std::min(0.1775 * form_.waist, 0.97 * half), 2.4);
  underbust_depth_ = depth_for(underbust, 0.93 * half, 2.6);
  bust_depth_ = depth_for(underbust + 0.35 * (chest - underbust), half, 2.8);
  chest_depth_ = depth_for(chest, 1.07 * half, 3.0);
  breast_depth_ = 30.0 + 0.3 * form_.cup;
}

void Torso::set_profiles() {
  const double frame = form_.bust - form_.cup + 137.0;
  const double half = 0.505 * survey_breadth(frame);
  const double waist_half = std::min(0.1775 * form_.waist, 0.97 * half);
  const double along = form_.shoulder_length * std::cos(form_.slope * kDegree);
  x_neck_ = neck_width_ + 4.0;
  x_shoulder_ = x_neck_ + along;
  const double ball = std::max(x_shoulder_ + 18.0, 1.05 * half);
  width_ = Profile({{-120.0, 1.14 * waist_half},
                    {0.0, waist_half},
                    {z_underbust_, 0.93 * half},
                    {z_bust_, half},
                    {z_armpit_, 1.07 * half},
                    {std::max(z_shoulder_, z_armpit_ + 40.0), ball},
                    {form_.back_height + 60.0, ball + 1.0}});
  exponent_ = Profile({{-120.0, 2.4},
                       {0.0, 2.4},
                       {z_underbust_, 2.6},
                       {z_bust_, 2.8},
                       {z_armpit_, upper_exponent_},
                       {form_.back_height + 60.0, upper_exponent_}});
  back_below_ = Profile({{-120.0, -0.5 * waist_depth_ - 30.0}, {0.0, -0.5 * waist_depth_}});
  // Front of the trunk at the centre.
  const auto front = [&](double z, double depth) { return Vec2(z, back_line(z) + depth); };
  const double nape = back_line(form_.back_height);
  const double pit = nape + 2.0 * neck_depth_ - 28.0;
  const double chest_front = std::max(front(z_armpit_, chest_depth_).y(), pit + 15.0);
  const Profile front_line({front(-120.0, waist_depth_ + 45.0), front(0.0, waist_depth_),
                            front(z_underbust_, underbust_depth_), front(z_bust_, bust_depth_),
                            Vec2(z_armpit_, chest_front), Vec2(z_front_neck_, pit),
                            Vec2(z_neck_side_ + 25.0, nape + neck_depth_ + 15.0)});
  std::vector<Vec2> depths;
  for (double z = -120.0; z <= form_.back_height + 61.0; z += 6.0) {
    depths.emplace_back(z, std::max(front_line.at(z) - back_line(z), 50.0));
  }
  depth_ = Profile(depths);
}

double Torso::back_line(double z) const {
  if (z <= 0.0) return back_below_.at(z);
  // Hollow at the waist, blades at two thirds of the height; straight on above the nape.
  const double u = z / form_.back_height, capped = std::min(u, 1.0);
  const double curve = 6.75 * capped * capped * (1.0 - capped) - 6.75 * (u - capped);
  return -0.5 * waist_depth_ + lean_ * u - form_.back_curve * curve;
}

double Torso::middle(double z) const { return back_line(z) + 0.5 * depth_.at(z); }

double Torso::trunk(const Vec3& p) const {
  const double z = p.z(), y = p.y() - middle(z), x = std::abs(p.x());
  const double g =
      super_norm(x / width_.at(z), std::abs(y) / (0.5 * depth_.at(z)), exponent_.at(z));
  const double r = std::hypot(x, y);
  return g > 0.05 ? r * (1.0 - 1.0 / g) : -0.5 * depth_.at(z);
}

double Torso::trunk_front(double x, double z, double side) const {
  const double n = exponent_.at(z);
  const double rest = 1.0 - std::pow(std::min(x / width_.at(z), 1.0), n);
  return middle(z) + side * 0.5 * depth_.at(z) * std::pow(rest, 1.0 / n);
}

void Torso::set_breast() {
  breast_at_ = {x_bust_, trunk_front(x_bust_, z_bust_, 1.0) - 6.0, z_bust_};
}

void Torso::set_blade() {
  const double z = 0.66 * form_.back_height, x = 0.42 * x_shoulder_;
  blade_at_ = {x, trunk_front(x, z, -1.0) + 25.0 - 5.0, z};
}

double Torso::with_breasts(const Vec3& p) const {
  const Vec3 to = p - breast_at_;
  const Vec3 right(std::abs(p.x()) - breast_at_.x(), to.y(), to.z());
  const double down = std::min(0.95 * breast_, z_bust_ - z_underbust_ - 6.0);
  const double tall = right.z() > 0.0 ? 1.2 * breast_ : down;
  const double g = Vec3(right.x() / breast_, right.y() / breast_depth_, right.z() / tall).norm();
  const double breast = g > 0.05 ? right.norm() * (1.0 - 1.0 / g) : -breast_depth_;
  const Vec3 blade(std::abs(p.x()) - blade_at_.x(), p.y() - blade_at_.y(), p.z() - blade_at_.z());
  const double b = Vec3(blade.x() / 50.0, blade.y() / 25.0, blade.z() / 75.0).norm();
  const double blades = b > 0.05 ? blade.norm() * (1.0 - 1.0 / b) : -25.0;
  return smooth_min(smooth_min(trunk(p), breast, 20.0), blades, 15.0);
}

double Torso::ridge_y(double x) const {
  const double nape = back_line(form_.back_height);
  const double at_neck = nape + neck_depth_ - 4.0;
  const double at_shoulder =
      std::min(middle(std::max(z_shoulder_, z_armpit_ + 40.0)), at_neck - 5.0);
  const double t = std::clamp((x - x_neck_) / (x_shoulder_ - x_neck_), -0.5, 1.2);
  return at_neck + t * (at_shoulder - at_neck);
}

double Torso::roof(const Vec3& p) const {
  // A ridge from side neck to shoulder point that falls to front and back and rolls over the ball.
  constexpr double kBall = 45.0, kMostFall = 120.0;
  const double ridge = 55.0 * std::max(chest_depth_ / 210.0, 1.0);
  const double x = std::abs(p.x()), fall = (z_neck_side_ - z_shoulder_) / (x_shoulder_ - x_neck_);
  const double over = std::max(x - (x_shoulder_ - 8.0), 0.0), aside = p.y() - ridge_y(x);
  const double over_capped = std::min(over, 60.0),
               aside_capped = std::clamp(aside, -1.6 * ridge, 1.6 * ridge);
  const double falls =
      aside_capped * aside_capped / (2.0 * ridge) + std::abs(aside - aside_capped) * 1.6;
  const double top = z_neck_side_ - fall * (x - x_neck_) -
                     over_capped * over_capped / (2.0 * kBall) - std::min(falls, kMostFall);
  const double steep =
      std::hypot(1.0, fall + over_capped / kBall, falls < kMostFall ? aside_capped / ridge : 0.0);
  return (p.z() - top) / steep;
}

double Torso::neck(const Vec3& p) const {
  constexpr double kLean = 0.36;  // to the front for each mm up: 20 degrees, ours
  const double at_nape = back_line(form_.back_height) + neck_depth_;
  const double y = p.y() - (at_nape + kLean * (p.z() - form_.back_height)), x = std::abs(p.x());
  const double g = std::hypot(x / neck_width_, y / neck_depth_), r = std::hypot(x, y);
  const double column = g > 0.05 ? r * (1.0 - 1.0 / g) : -neck_width_;
  // Only above the pit of the neck, so that it nowhere comes out of the chest.
  return smooth_max(column, 0.8 * (z_front_neck_ - 40.0 - p.z()), 10.0);
}

double Torso::field(const Vec3& p) const {
  return smooth_min(smooth_max(with_breasts(p), roof(p), 30.0), neck(p), 12.0);
}

double Torso::distance(const Vec3& p, Vec3& out) const {
  constexpr double kStep = 0.25;
  for (int i = 0; i < 3; ++i) {
    Vec3 step = Vec3::Zero();
    step[i] = kStep;
    out[i] = (field(p + step) - field(p - step)) / (2.0 * kStep);
  }
  const double steep = std::max(out.norm(), 0.2);
  out.normalize();
  return field(p) / steep;
}

double Torso::distance(const Vec3& p) const {
  Vec3 out;
  return distance(p, out);
}

Vec3 Torso::nearest_skin(const Vec3& p) const {
  Vec3 skin = p, out;
  for (int i = 0; i < 20; ++i) {
    const double d = distance(skin, out);
    skin -= d * out;
    // Slide towards the point that is straight below p.
    distance(skin, out);
    const Vec3 to = p - skin;
    skin += 0.5 * (to - to.dot(out) * out);
  }
  skin -= distance(skin, out) * out;
  return skin;
}

double Torso::stand_off(const Vec3& p) const {
  return distance(p) <= 0.0 ? 0.0 : (p - nearest_skin(p)).norm();
}

std::vector<Vec2> Torso::trunk_section(double z, double off) const {
  std::vector<Vec2> points;
  for (int i = 0; i <= kSectionRays; ++i) {
    const double t = std::numbers::pi * i / kSectionRays;
    const Vec2 ray(std::sin(t), std::cos(t));
    const double r = argument_for(0.0, 5.0, 500.0, [&](double s) {
      return with_breasts({s * ray.x(), middle(z) + s * ray.y(), z});
    });
    points.emplace_back((r + off) * ray.x(), middle(z) + (r + off) * ray.y());
  }
  return points;
}

std::vector<Vec2> Torso::section(double z) const {
  std::vector<Vec2> points;
  for (int i = 0; i <= kSectionRays; ++i) {
    const double t = std::numbers::pi * i / kSectionRays;
    const Vec2 ray(std::sin(t), std::cos(t));
    const double r = argument_for(0.0, 5.0, 500.0, [&](double s) {
      return field({s * ray.x(), middle(z) + s * ray.y(), z});
    });
    points.emplace_back(r * ray.x(), middle(z) + r * ray.y());
  }
  return points;
}

double Torso::armhole_line(double z) const {
  const Vec3& top = landmarks_.shoulder_point;
  const Vec3& bottom = landmarks_.armpit;
  const double t = std::clamp((top.z() - z) / (top.z() - bottom.z()), 0.0, 1.0);
  return top.x() + t * (bottom.x() - 4.0 - top.x());
}

Vec3 Torso::from_above(double x, double y) const {
  double z = form_.back_height + 60.0;
  while (z > z_armpit_ && field({x, y, z}) > 0.0) z -= 2.0;
  return {x, y, argument_for(0.0, z, z + 2.0, [&](double height) {
            return field({x, y, height});
          })};
}

void Torso::find_landmarks() {
  const auto at_front = [&](double x, double z, double from) {
    return Vec3(x,
                argument_for(0.0, from, from + 400.0,
                             [&](double y) {
                               return field({x, y, z});
                             }),
                z);
  };
  const auto at_back = [&](double z) {
    const double from = middle(z);
    return Vec3(0.0,
                from - argument_for(0.0, 0.0, 400.0,
                                    [&](double y) {
                                      return field({0.0, from - y, z});
                                    }),
                z);
  };
  const auto at_side = [&](double z) {
    const double y = middle(z);
    return Vec3(argument_for(0.0, 0.0, 400.0, [&](double x) { return field({x, y, z}); }), y, z);
  };
  landmarks_.nape = at_back(form_.back_height);
  landmarks_.back_waist = at_back(0.0);
  landmarks_.front_waist = at_front(0.0, 0.0, middle(0.0));
  landmarks_.side_waist = at_side(0.0);
  landmarks_.front_neck = at_front(0.0, z_front_neck_, middle(z_front_neck_));
  landmarks_.armpit = at_side(z_armpit_);
  landmarks_.bust_point = at_front(x_bust_, z_bust_, middle(z_bust_));
  landmarks_.side_neck = from_above(x_neck_, ridge_y(x_neck_));
  landmarks_.shoulder_point = from_above(x_shoulder_, ridge_y(x_shoulder_));
}

void Torso::match_girths() {
  const double underbust = form_.bust - form_.cup;
  const double chest = upper_chest(underbust, form_.cup);
  const double first_chest = chest_depth_, first_underbust = underbust_depth_;
  for (int round = 0; round < 5; ++round) {
    set_profiles();
    set_breast();
    set_blade();
    breast_depth_ = argument_for(form_.bust, 8.0, 160.0, [&](double depth) {
      breast_depth_ = depth;
      return level_girth(*this, z_bust_);
    });
    find_landmarks();
    // A girth grows by about 1.6 mm for each mm of depth.
    chest_depth_ = std::clamp(chest_depth_ + (chest - level_girth(*this, z_armpit_)) / 1.8,
                              0.88 * first_chest, 1.12 * first_chest);
    underbust_depth_ =
        std::clamp(underbust_depth_ + (underbust - level_girth(*this, z_underbust_)) / 1.8,
                   0.88 * first_underbust, 1.12 * first_underbust);
    upper_exponent_ = std::clamp(
        upper_exponent_ + 0.012 * (survey_armscye(form_.bust) - armscye_girth(*this)), 2.4, 4.2);
  }
}

void Torso::match_neck() {
  for (int round = 0; round < 3; ++round) {
    const double factor = form_.neck_base / neck_base_girth(*this);
    neck_width_ *= factor;
    neck_depth_ *= factor;
    set_profiles();
    set_breast();
    set_blade();
    find_landmarks();
  }
}

std::vector<TorsoForm> torso_forms() {
  // name, bust, cup, waist, slope, back curve, shoulder, neck base, nape over waist. Spread so that
  // no two of bust, cup, slope and back go together; neck bases and heights about the survey's mean
  // for the bust. Ours.
  std::vector<TorsoForm> forms = {
      {"t01", 760, 60, 620, 25, 40, 138, 324, 345},
      {"t02", 770, 110, 610, 20, 52, 140, 322, 352},
      {"t03", 800, 90, 650, 30, 34, 146, 330, 340},
      {"t04", 810, 140, 640, 24, 46, 136, 328, 360},
      {"t05", 830, 70, 690, 17, 58, 150, 338, 350},
      {"t06", 840, 120, 670, 27, 42, 144, 336, 346},
      {"t07", 860, 170, 660, 22, 32, 142, 334, 356},
      {"t08", 870, 100, 710, 32, 50, 148, 344, 344},
      {"t09", 890, 140, 700, 26, 46, 145, 342, 351},
      {"t10", 900, 120, 730, 19, 38, 150, 350, 362},
      {"t11", 910, 190, 700, 28, 54, 140, 340, 348},
      {"t12", 915, 137, 725, 25, 46, 145, 346, 351},
      {"t13", 930, 80, 780, 23, 60, 152, 358, 355},
      {"t14", 940, 160, 750, 30, 36, 143, 350, 340},
      {"t15", 960, 150, 780, 15, 48, 149, 354, 358},
      {"t16", 970, 210, 760, 26, 42, 141, 350, 346},
      {"t17", 990, 110, 830, 28, 52, 147, 362, 354},
      {"t18", 1000, 180, 810, 21, 33, 146, 358, 350},
      {"t19", 1030, 220, 830, 24, 56, 148, 362, 360},
      {"t20", 1050, 140, 890, 31, 44, 144, 370, 347},
      {"t21", 1090, 190, 910, 18, 38, 150, 374, 356},
      {"t22", 1130, 160, 970, 25, 60, 146, 382, 352},
      {"t23", 1180, 260, 960, 23, 46, 149, 384, 362},
      {"t24", 1230, 200, 1050, 28, 50, 147, 396, 350},
      {"t25", 1260, 240, 1060, 20, 40, 152, 398, 358},
      {"t26", 1300, 220, 1110, 22, 54, 150, 406, 355},
  };
  for (std::size_t i = 0; i < forms.size(); ++i) forms[i].kept = i % 2 == 1;
  return forms;
}

}  // namespace blockwright::torso
