#pragma once

#include "blockwright/measure/body.hpp"

#include <array>

namespace blockwright {

/// How far a body's numbers may lie from the person: what the tape errs by, and what the estimates
/// leave open. An estimate errs with the tapes that it was made of, so they hang together.
class BodySpread {
 public:
  /// In mm x mm, with an angle in degrees. 0 for what the maker is sure of, and for what the body
  /// does not have.
  [[nodiscard]] double covariance(MeasurementName a, MeasurementName b) const {
    return values_[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)];
  }
  void set(MeasurementName a, MeasurementName b, double covariance) {
    values_[static_cast<std::size_t>(a)][static_cast<std::size_t>(b)] = covariance;
    values_[static_cast<std::size_t>(b)][static_cast<std::size_t>(a)] = covariance;
  }
  [[nodiscard]] Measure sd(MeasurementName name) const;

 private:
  std::array<std::array<double, kMeasurementCount>, kMeasurementCount> values_{};
};

/// A taped value has the error of its tape (taped_sd()); of an estimate come the survey's women of
/// the same tapes on top.
///
/// Accuracy: exact for a normal population, as long as no estimate was moved to keep its share or
/// its order (fill_in()). Requires: a body from fill_in().
BodySpread spread_of(const Body& body);

}  // namespace blockwright
