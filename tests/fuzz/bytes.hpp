#pragma once

#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string>

namespace blockwright_fuzz {

/// A fuzz input read as decisions, so that nearly every input means something. Past its end every
/// byte is 0: a short input is a short story.
class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : data_(data), left_(size) {}

  [[nodiscard]] bool done() const { return left_ == 0; }

  unsigned byte() {
    if (done()) return 0;
    --left_;
    return *data_++;
  }

  bool flag() { return (byte() & 1U) != 0; }

  /// A whole number below `count`. Requires: 1 to 256.
  std::size_t below(std::size_t count) { return byte() % count; }

  template <class Items>
  const auto& one_of(const Items& items) {
    return items[below(std::size(items))];
  }

  /// From low to high, both included, in 65,535 steps.
  double between(double low, double high) {
    const unsigned steps = 256U * byte() + byte();
    return low + (high - low) * (steps / 65535.0);
  }

  /// Any finite double: one that is known to be awkward, or any bits.
  double any_finite() {
    using Limits = std::numeric_limits<double>;
    constexpr std::array<double, 12> awkward = {
        0.0,  -0.0, Limits::denorm_min(), Limits::min(),   1e-9, -1e-9, Limits::epsilon(), -1.0,
        1e16, 1e20, Limits::max(),        Limits::lowest()};
    const std::size_t which = byte();
    if (which < 0xC0) return awkward[which % awkward.size()];
    std::array<std::uint8_t, sizeof(double)> bits{};
    for (std::uint8_t& part : bits) part = static_cast<std::uint8_t>(byte());
    double value = 0.0;
    std::memcpy(&value, bits.data(), sizeof value);
    return std::isfinite(value) ? value : 0.0;
  }

  /// Nearly always from low to high; one in 32 is any finite number.
  double amount(double low, double high) {
    return byte() >= 0xF8 ? any_finite() : between(low, high);
  }

  /// The next bytes as text, `most` at most; a byte of 0 ends it.
  std::string text(std::size_t most) {
    std::string result;
    while (!done() && result.size() < most) {
      const unsigned next = byte();
      if (next == 0) break;
      result += static_cast<char>(next);
    }
    return result;
  }

 private:
  const std::uint8_t* data_;
  std::size_t left_;
};

}  // namespace blockwright_fuzz
