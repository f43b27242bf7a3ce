#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace blockwright {

/// Random numbers from a seed; the same on every machine and with every standard library.
class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}

  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  /// A whole number from low to high, both included.
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  /// Of a normal distribution with mean 0 and SD 1 (Box and Muller's rule:
  /// std::normal_distribution differs from library to library).
  double normal() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - between(0.0, 1.0)));
    return radius * std::cos(2.0 * std::numbers::pi * between(0.0, 1.0));
  }
  std::uint64_t bits() { return engine_(); }

 private:
  std::mt19937_64 engine_;
};

}  // namespace blockwright
