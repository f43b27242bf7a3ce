#include "support/armhole_shape.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// Ours, by eye: nearly a quarter circle has a hollow of 0.21 of its chord; a straight armhole has
// none. The back's share so that the side seam falls under the arm.
constexpr double kLeastHollow = 0.13, kMostHollow = 0.28;
constexpr double kLeastBackShare = 0.42, kMostBackShare = 0.52;
constexpr double kLeastRadius = 12.0;    // mm
constexpr double kRounding = 1e-6;       // of what was solved for
constexpr double kUnderarmWithin = 3.0;  // degrees off half a turn, by eye
constexpr int kSamples = 64;

double farthest_from_chord(const Path& path) {
  const Vec along = path.end() - path.start();
  double most = 0.0;
  for (const Curve& curve : path.curves()) {
    for (int i = 0; i <= kSamples; ++i) {
      const Vec to = point_at(curve, static_cast<double>(i) / kSamples) - path.start();
      most = std::fmax(most, std::abs(cross(along, to)) / norm(along));
    }
  }
  return most;
}

double width_part(const Piece& piece, const char* across) {
  return piece.landmark("underarm_point").x - piece.landmark(across).x;
}

/// The angle inside a piece between its side seam and its armhole, in degrees.
double underarm_angle(const Piece& piece) {
  const Path& side = piece.edge("side").path;
  const Path& armhole = piece.edge("armhole").path;
  return std::abs(turn_between(-end_tangent(side), start_tangent(armhole)).degrees());
}

}  // namespace

ArmholeShape armhole_shape(const Pattern& block) {
  const Piece &front = block.piece("front"), &back = block.piece("back");
  const Path& armhole = back.edge("armhole").path;
  const double in_back = width_part(back, "across_back_point");
  const double in_front = width_part(front, "across_front_point");
  return {farthest_from_chord(armhole) / distance(armhole.start(), armhole.end()),
          in_back / (in_back + in_front),
          std::min(least_radius(armhole), least_radius(front.edge("armhole").path)),
          underarm_angle(front) + underarm_angle(back)};
}

std::vector<std::string> broken_laws(const ArmholeShape& shape) {
  const auto within = [](double value, double least, double most) {
    return value >= least - kRounding && value <= most + kRounding;
  };
  std::vector<std::string> broken;
  if (!within(shape.back_hollow, kLeastHollow, kMostHollow)) broken.emplace_back("back hollow");
  if (!within(shape.back_share, kLeastBackShare, kMostBackShare)) broken.emplace_back("back share");
  if (shape.least_radius < kLeastRadius) broken.emplace_back("radius");
  if (std::abs(shape.sewn_underarm - 180.0) > kUnderarmWithin) broken.emplace_back("underarm");
  return broken;
}

}  // namespace blockwright
