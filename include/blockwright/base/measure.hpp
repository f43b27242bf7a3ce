#pragma once

#include "blockwright/base/angle.hpp"
#include "blockwright/base/length.hpp"

#include <compare>
#include <stdexcept>

namespace blockwright {

/// What a tape or an angle meter shows: a length, or an angle. Kept in mm or in degrees, so that
/// every reading comes back to its last digit.
///
///     Measure waist = Length::mm(745.0);
///     Measure slope = Measure::degrees(24.5);
///     waist.length();  // of an angle: throws std::logic_error
///
/// Two of them are compared, added and divided only if both are lengths or both angles: else
/// std::logic_error is thrown, which in a constant does not compile.
class Measure {
 public:
  constexpr Measure() = default;
  constexpr Measure(Length length) : number_(length.mm()) {}  // NOLINT(google-explicit-constructor)
  constexpr Measure(Angle angle)                              // NOLINT(google-explicit-constructor)
      : Measure(angle.degrees(), true) {}
  static constexpr Measure degrees(double value) { return {value, true}; }

  [[nodiscard]] constexpr bool is_angle() const { return is_angle_; }
  [[nodiscard]] constexpr Length length() const { return Length::mm(as(Measure())); }
  [[nodiscard]] constexpr Angle angle() const { return Angle::degrees(as(degrees(0.0))); }
  /// In mm, or in degrees: for tables, statistics and files, which say which.
  [[nodiscard]] constexpr double number() const { return number_; }

  constexpr bool operator==(const Measure&) const = default;
  constexpr Measure operator-() const { return {-number_, is_angle_}; }
  friend constexpr auto operator<=>(Measure a, Measure b) { return a.as(b) <=> b.number_; }
  friend constexpr Measure operator+(Measure a, Measure b) {
    return {a.as(b) + b.number_, b.is_angle_};
  }
  constexpr Measure& operator+=(Measure other) { return *this = *this + other; }
  friend constexpr Measure operator-(Measure a, Measure b) {
    return {a.as(b) - b.number_, b.is_angle_};
  }
  friend constexpr Measure operator*(double factor, Measure a) {
    return {factor * a.number_, a.is_angle_};
  }
  friend constexpr Measure operator/(Measure a, double divisor) {
    return {a.number_ / divisor, a.is_angle_};
  }
  friend constexpr double operator/(Measure a, Measure b) { return a.as(b) / b.number_; }
  friend constexpr Measure abs(Measure a) { return a.number_ < 0.0 ? -a : a; }

 private:
  constexpr Measure(double number, bool is_angle) : number_(number), is_angle_(is_angle) {}

  // Its number, if it is of the other's kind.
  [[nodiscard]] constexpr double as(Measure other) const {
    if (is_angle_ != other.is_angle_) throw std::logic_error("a length is no angle");
    return number_;
  }

  double number_ = 0.0;
  bool is_angle_ = false;
};

}  // namespace blockwright
