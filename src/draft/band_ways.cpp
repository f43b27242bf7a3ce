#include "band_ways.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

double dot_of(const WayVector& a, const WayVector& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

WayVector times(const WayTable& table, const WayVector& v) {
  WayVector product;
  for (const WayVector& row : table) product.push_back(dot_of(row, v));
  return product;
}

/// How two ways move the places together.
WayTable moved_together(const WayTable& moves) {
  WayTable table;
  for (const WayVector& a : moves) {
    WayVector& row = table.emplace_back();
    for (const WayVector& b : moves) row.push_back(dot_of(a, b));
  }
  return table;
}

/// The covariance of the ways, which each reading narrows.
class WaysLeft {
 public:
  explicit WaysLeft(std::size_t count) : covariance_(count, WayVector(count, 0.0)) {
    for (std::size_t i = 0; i < count; ++i) covariance_[i][i] = 1.0;
  }

  /// The sum of the squares of what the places are off.
  [[nodiscard]] double squares(const WayTable& together) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < together.size(); ++i) sum += dot_of(covariance_[i], together[i]);
    return sum;
  }
  /// After a reading of what the ways move by `by`, which errs by `sd`. That of a Kalman filter
  /// (R. E. Kalman, "A New Approach to Linear Filtering and Prediction Problems", Journal of Basic
  /// Engineering 82 (1960), 35-45; from memory).
  [[nodiscard]] WaysLeft read(const WayVector& by, double sd) const {
    WaysLeft left = *this;
    const WayVector gain = times(covariance_, by);
    const double whole = dot_of(gain, by) + sd * sd;
    for (std::size_t i = 0; i < gain.size(); ++i) {
      for (std::size_t j = 0; j < gain.size(); ++j) {
        left.covariance_[i][j] -= gain[i] * gain[j] / whole;
      }
    }
    return left;
  }

 private:
  WayTable covariance_;
};

WayVector moved_by(const std::vector<BodyWay>& ways, MeasurementName name) {
  WayVector by;
  for (const BodyWay& way : ways) by.push_back(way[static_cast<std::size_t>(name)]);
  return by;
}

/// The best reading so far, and what it leaves.
struct BestReading {
  Retake retake;
  double squares = 0.0;
  WaysLeft left;
};

/// The reading that leaves least, of those not yet chosen; nothing where none tells anything.
std::optional<BestReading> best_reading(const std::vector<BodyWay>& ways, const WayTable& together,
                                        const std::vector<Retake>& chosen, const WaysLeft& left) {
  std::optional<BestReading> best;
  for (const MeasurementInfo& entry : kMeasurements) {
    const WayVector by = moved_by(ways, entry.name);
    if (dot_of(by, by) == 0.0) continue;
    if (std::ranges::find(chosen, entry.name, &Retake::name) != chosen.end()) continue;
    const WaysLeft then = left.read(by, tape_sd(entry.name).number());
    const double squares = then.squares(together);
    if (!best || squares < best->squares) best = {{entry.name, false, 0.0}, squares, then};
  }
  return best;
}

/// Bands that are narrower to either side, in the mean, are good enough, in mm.
constexpr double kGoodEnough = 1.0;

}  // namespace

std::vector<BodyWay> ways_of(const BodySpread& spread) {
  std::vector<BodyWay> ways;
  for (const MeasurementInfo& column : kMeasurements) {
    const auto j = static_cast<std::size_t>(column.name);
    const auto left = [&](const MeasurementInfo& row) {
      double value = spread.covariance(row.name, column.name);
      for (const BodyWay& way : ways) value -= way[static_cast<std::size_t>(row.name)] * way[j];
      return value;
    };
    const double own = left(column);
    if (own <= 1e-9 * spread.covariance(column.name, column.name)) continue;
    BodyWay way{};
    for (const MeasurementInfo& row : kMeasurements) {
      if (row.name >= column.name) {
        way[static_cast<std::size_t>(row.name)] = left(row) / std::sqrt(own);
      }
    }
    ways.push_back(way);
  }
  return ways;
}

std::vector<Retake> to_take_first(const Body& body, const std::vector<BodyWay>& ways,
                                  const WayTable& moves) {
  constexpr std::size_t count = 2;
  const WayTable together = moved_together(moves);
  WaysLeft left(ways.size());
  const double now = left.squares(together);
  std::vector<Retake> first;
  if (moves.empty()) return first;
  const double width = kBandSd * std::sqrt(now / static_cast<double>(moves.front().size()));
  double before = now;
  while (first.size() < count && width >= kGoodEnough) {
    auto best = best_reading(ways, together, first, left);
    if (!best) break;
    best->retake.taped = body.taped(best->retake.name);
    best->retake.narrows = (std::sqrt(before) - std::sqrt(best->squares)) / std::sqrt(now);
    first.push_back(best->retake);
    before = best->squares;
    left = best->left;
  }
  return first;
}

}  // namespace blockwright
