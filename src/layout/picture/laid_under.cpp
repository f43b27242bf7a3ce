#include "blockwright/block/kinds.hpp"
#include "blockwright/layout/versions.hpp"
#include "piece_change.hpp"

#include <cmath>

namespace blockwright {
namespace {

// Places along the outline that are asked, mm apart.
constexpr double kPlacesApart = 6.0;
// A place this far from the old outline counts half, mm. Ours.
constexpr double kHalfCounts = 0.5;
// Heights that differ by less are one, mm.
constexpr double kSameHeight = 0.01;
// A named point must do so much better than the frame that the pieces were drafted in.
constexpr double kBetter = 1e-6;

std::vector<Point> places_along(const std::vector<PieceLine>& lines) {
  std::vector<Point> places;
  for (const PieceLine& line : lines) {
    const double whole = length(line.path);
    for (double s = 0.5 * kPlacesApart; s < whole; s += kPlacesApart) {
      places.push_back(point_at_length(line.path, s));
    }
  }
  return places;
}

/// How much of the outline lies where it was if the earlier one is laid `up` higher.
double unmoved(const std::vector<Point>& places, const LinesAsked& earlier, double up) {
  double sum = 0.0;
  for (const Point place : places) {
    const double off = earlier.nearest(place - Vec{0.0, up}).distance / kHalfCounts;
    sum += 1.0 / (1.0 + off * off);
  }
  return sum;
}

/// As drafted, and as each named point asks for.
std::vector<double> heights(const Piece& piece, const Piece& earlier) {
  std::vector<double> all = {0.0};
  for (const Landmark& landmark : piece.landmarks) {
    const auto* was = find_named(earlier.landmarks, landmark.name);
    if (was == nullptr) continue;
    const double up = landmark.at.y - was->at.y;
    const auto same = [&](double other) { return std::abs(other - up) < kSameHeight; };
    if (first_where(all, same) == nullptr) all.push_back(up);
  }
  return all;
}

double still_height(const Piece& piece, const Piece& earlier, const Placement& side) {
  const std::vector<double> asked = heights(piece, earlier);
  if (asked.size() == 1) return asked.front();
  const std::vector<Point> places = places_along(lines_of(piece));
  const LinesAsked lines(lines_of(earlier, side));
  double best = 0.0, most = -1.0;
  for (const double up : asked) {
    const double score = unmoved(places, lines, up);
    if (score <= most + kBetter) continue;
    most = score;
    best = up;
  }
  return best;
}

// A panel is named after its piece: "side_front" of "front", "front_yoke" of "front".
bool is_panel_of(const Piece& panel, const Piece& piece) {
  const std::string &whole = piece.name, &part = panel.name;
  return part == whole || part.ends_with("_" + whole) || part.starts_with(whole + "_");
}

}  // namespace

std::optional<double> alignment_level(const Piece& piece, Alignment alignment) {
  if (alignment == Alignment::Still) return std::nullopt;
  if (alignment == Alignment::Bust) {
    const BalanceLine* line = find_line(piece, LineUse::Bust);
    return line == nullptr ? std::nullopt : std::optional(line->path.start().y);
  }
  const Landmark* point = find_landmark(
      piece, alignment == Alignment::Neck ? PointUse::CentreNeck : PointUse::CentreWaist);
  return point == nullptr ? std::nullopt : std::optional(point->at.y);
}

const Piece* earlier_version(const Piece& piece, const Pattern& earlier) {
  const auto* found =
      first_where(earlier.pieces, [&](const Piece& old) { return is_panel_of(piece, old); });
  if (found != nullptr) return found;
  return first_where(earlier.pieces, [&](const Piece& old) { return is_panel_of(old, piece); });
}

Placement laid_under(const Piece& piece, const Piece& earlier, Alignment alignment) {
  const Placement side =
      is_mirrored(piece) == is_mirrored(earlier) ? Placement() : Placement::mirror();
  const auto here = alignment_level(piece, alignment), there = alignment_level(earlier, alignment);
  double up = here && there ? *here - *there : 0.0;
  if (alignment == Alignment::Still) up = still_height(piece, earlier, side);
  return side.then(Placement::shift({0.0, up}));
}

}  // namespace blockwright
