#pragma once

#include <compare>
#include <numbers>

namespace blockwright {

/// An angle, kept in radians; anticlockwise is positive wherever an angle turns something.
///
///     Angle slope = Angle::degrees(21.0);
///     double s = std::sin(slope.radians());
class Angle {
 public:
  constexpr Angle() = default;
  static constexpr Angle radians(double value) { return Angle(value); }
  static constexpr Angle degrees(double value) { return Angle(value * std::numbers::pi / 180.0); }

  [[nodiscard]] constexpr double radians() const { return radians_; }
  [[nodiscard]] constexpr double degrees() const { return radians_ * 180.0 / std::numbers::pi; }

  constexpr auto operator<=>(const Angle&) const = default;
  constexpr Angle operator-() const { return Angle(-radians_); }
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.radians_ + b.radians_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.radians_ - b.radians_); }
  friend constexpr Angle operator*(double factor, Angle a) { return Angle(factor * a.radians_); }
  friend constexpr Angle operator/(Angle a, double divisor) { return Angle(a.radians_ / divisor); }

 private:
  explicit constexpr Angle(double radians) : radians_(radians) {}
  double radians_ = 0.0;
};

}  // namespace blockwright
