#include "blockwright/base/number_text.hpp"

#include "blockwright/base/error.hpp"

#include <array>
#include <cmath>
#include <numeric>

namespace blockwright {
namespace {

constexpr int kMostDecimals = 12;
constexpr long long kSixteenths = 16;
constexpr double kMostPlain = 1e9;    // above it a number that cannot be meant is told with a power
constexpr double kMostInches = 1e15;  // above it a double does not tell sixteenths apart

bool is_negative_zero_text(const std::string& text) {
  return text.front() == '-' && text.find_first_of("123456789") == std::string::npos;
}

}  // namespace

std::string fixed(double value, int decimals) {
  require(std::isfinite(value), "a number to print is not finite");
  require(decimals >= 0 && decimals <= kMostDecimals, "decimals out of range");
  std::array<char, 400> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                    std::chars_format::fixed, decimals);
  std::string text(buffer.data(), result.ptr);
  if (is_negative_zero_text(text)) text.erase(0, 1);
  return text;
}

std::string trimmed(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string exact(double value) {
  require(std::isfinite(value), "a number to print is not finite");
  if (value == 0.0) return "0";
  std::array<char, 40> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
  return {buffer.data(), result.ptr};
}

std::string told_number(double value, int decimals) {
  if (!std::isfinite(value)) return "no number";
  return std::abs(value) < kMostPlain ? trimmed(value, decimals) : exact(value);
}

std::string inch_fraction(double inches) {
  require(std::abs(inches) <= kMostInches, "a number of inches to print is too large");
  const long long sixteenths = std::llround(std::abs(inches) * kSixteenths);
  const long long whole = sixteenths / kSixteenths;
  const long long rest = sixteenths % kSixteenths;
  std::string text = inches < 0 && sixteenths > 0 ? "-" : "";
  if (whole > 0 || rest == 0) text += std::to_string(whole);
  if (rest == 0) return text;
  const long long divisor = std::gcd(rest, kSixteenths);
  if (whole > 0) text += ' ';
  return text + std::to_string(rest / divisor) + '/' + std::to_string(kSixteenths / divisor);
}

}  // namespace blockwright
