#pragma once

#include <charconv>
#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// The one way numbers become text, and back. Never uses a locale; never prints "-0".

/// `value` with exactly `decimals` places, e.g. fixed(12.345, 2) = "12.35". The exact value of the
/// double is rounded, halves to even: fixed(2.5, 0) = "2".
/// Requires: value is finite; decimals from 0 to 12.
std::string fixed(double value, int decimals);

/// As fixed(), without trailing zeros: trimmed(12.50, 3) = "12.5", trimmed(3.0, 3) = "3".
std::string trimmed(double value, int decimals);

/// As trimmed(), for a number that somebody gave and that is told because it cannot be used:
/// whatever it is has a short text. Beyond 1e9 either way as exact() has it, "no number" where it
/// is not finite.
std::string told_number(double value, int decimals);

/// The shortest text that reads back as exactly the same double ("0.1", "1e-09"); valid in JSON.
/// Requires: value is finite.
std::string exact(double value);

/// Inches as a person reads a tape: to the nearest 1/16, e.g. inch_fraction(36.5) = "36 1/2".
/// Requires: |inches| <= 1e15.
std::string inch_fraction(double inches);

/// The number that a text is: number_in<int>("12"). Nothing if any other character is in it, or if
/// the number does not fit.
template <class Number>
std::optional<Number> number_in(std::string_view text) {
  Number number{};
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, number);
  return error == std::errc() && stop == end ? std::optional(number) : std::nullopt;
}

}  // namespace blockwright
