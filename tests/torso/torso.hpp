#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

/// A body to try a toile on. Its own frame, in mm: x from the centre to the wearer's side, y to the
/// front, z up from the natural waist. Both halves are alike; only x >= 0 is looked at.
namespace blockwright::torso {

using Vec2 = Eigen::Vector2d;
using Vec3 = Eigen::Vector3d;

/// What a torso is made from, in mm. Girths come out within a millimetre or two of these; what the
/// tape reads on the finished surface is what counts.
struct TorsoForm {
  std::string name;
  double bust = 907.0;
  double cup = 137.0;  ///< bust less underbust
  double waist = 725.0;
  double slope = 25.7;       ///< of the shoulder, degrees
  double back_curve = 46.0;  ///< how far the blades lie behind the line from nape to waist
  double shoulder_length = 145.0;
  double neck_base = 346.0;    ///< girth
  double back_height = 351.0;  ///< nape over waist
  bool kept = false;           ///< held for the check, not to tune by
};

/// The fixed table: bust 760 to 1300, cup 60 to 260, slope 15 to 32 degrees, flat and round backs.
/// Alternate ones are kept.
std::vector<TorsoForm> torso_forms();

/// Named points on the skin.
struct Landmarks {
  Vec3 nape, side_neck, front_neck, shoulder_point, armpit, bust_point;
  Vec3 front_waist, side_waist, back_waist;
};

/// A number that changes with height: a monotone cubic through given heights.
class Profile {
 public:
  Profile() = default;
  /// Requires: heights rise.
  explicit Profile(std::vector<Vec2> height_and_value);
  [[nodiscard]] double at(double z) const;

 private:
  std::vector<Vec2> points_;
  std::vector<double> slopes_;
};

/// The body as a smooth field: level sections like superellipses, two breasts, two blades, a
/// shoulder roof and a leaning neck, blended into each other.
class Torso {
 public:
  explicit Torso(const TorsoForm& form);

  /// About the distance from the skin in mm, negative inside; exact near the skin.
  [[nodiscard]] double distance(const Vec3& p) const;
  /// The same with the direction out of the body.
  double distance(const Vec3& p, Vec3& out) const;
  /// The point of the skin nearest to one some cm off it.
  [[nodiscard]] Vec3 nearest_skin(const Vec3& p) const;
  /// Distance to the nearest skin for points some cm off; 0 inside.
  [[nodiscard]] double stand_off(const Vec3& p) const;

  [[nodiscard]] const TorsoForm& form() const { return form_; }
  [[nodiscard]] const Landmarks& landmarks() const { return landmarks_; }
  /// Where the level sections have their middle, mm to the front.
  [[nodiscard]] double middle(double z) const;
  /// The trunk's section with breasts, without shoulders and neck, `off` mm outside the skin: from
  /// the centre front (0) to the centre back (1) by angle.
  [[nodiscard]] std::vector<Vec2> trunk_section(double z, double off) const;
  /// The whole body's half section at that level, from the centre front to the centre back.
  [[nodiscard]] std::vector<Vec2> section(double z) const;
  /// Place of the shoulder ridge in plan: y at x.
  [[nodiscard]] double ridge_y(double x) const;
  /// x of the armhole line at a height: from shoulder point to armpit.
  [[nodiscard]] double armhole_line(double z) const;
  [[nodiscard]] double underbust_level() const { return z_underbust_; }

 private:
  void set_levels();
  void set_profiles();
  void set_breast();
  void set_blade();
  void match_girths();
  void match_neck();
  void find_landmarks();
  [[nodiscard]] double trunk(const Vec3& p) const;
  [[nodiscard]] double with_breasts(const Vec3& p) const;
  [[nodiscard]] double roof(const Vec3& p) const;
  [[nodiscard]] double neck(const Vec3& p) const;
  [[nodiscard]] double field(const Vec3& p) const;
  [[nodiscard]] double back_line(double z) const;
  [[nodiscard]] double trunk_front(double x, double z, double side) const;
  [[nodiscard]] Vec3 from_above(double x, double y) const;

  TorsoForm form_;
  Landmarks landmarks_;
  double z_underbust_ = 0, z_bust_ = 0, z_armpit_ = 0, z_shoulder_ = 0, z_neck_side_ = 0;
  double z_front_neck_ = 0, lean_ = 0;
  double x_neck_ = 0, x_shoulder_ = 0, x_bust_ = 0;
  double waist_depth_ = 0, underbust_depth_ = 0, bust_depth_ = 0, chest_depth_ = 0;  // whole
  double upper_exponent_ = 3.0;
  double neck_width_ = 0, neck_depth_ = 0;  // half
  double breast_ = 0, breast_depth_ = 0;    // radius across, depth
  Vec3 breast_at_, blade_at_;
  Profile width_, depth_, exponent_, back_below_;
};

}  // namespace blockwright::torso
