#pragma once

#include <cstdint>
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
  std::uint64_t bits() { return engine_(); }

 private:
  std::mt19937_64 engine_;
};

}  // namespace blockwright
