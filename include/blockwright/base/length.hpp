#pragma once

#include <compare>

namespace blockwright {

/// A length on the body or on the paper, kept in millimetres.
///
/// The unit is named where a number enters or leaves, so that no bare number crosses a public
/// function. Coordinates inside the geometry layer are plain doubles in millimetres.
///
///     Length shoulder = Length::cm(12.4);
///     double on_paper = shoulder.mm();        // 124.0
///
/// An inch is 25.4 mm exactly (international inch, 1959). Conversions cost one rounding.
class Length {
 public:
  constexpr Length() = default;
  static constexpr Length mm(double value) { return Length(value); }
  static constexpr Length cm(double value) { return Length(value * 10.0); }
  static constexpr Length inches(double value) { return Length(value * 25.4); }

  [[nodiscard]] constexpr double mm() const { return mm_; }
  [[nodiscard]] constexpr double cm() const { return mm_ / 10.0; }
  [[nodiscard]] constexpr double inches() const { return mm_ / 25.4; }

  constexpr auto operator<=>(const Length&) const = default;
  constexpr Length operator-() const { return Length(-mm_); }
  constexpr Length& operator+=(Length other) { return *this = *this + other; }
  friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
  friend constexpr Length operator*(double factor, Length a) { return Length(factor * a.mm_); }
  friend constexpr Length operator*(Length a, double factor) { return Length(factor * a.mm_); }
  friend constexpr Length operator/(Length a, double divisor) { return Length(a.mm_ / divisor); }
  friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }

 private:
  explicit constexpr Length(double mm) : mm_(mm) {}
  double mm_ = 0.0;
};

}  // namespace blockwright
