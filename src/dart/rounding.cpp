#include "rounding.hpp"

#include "blending.hpp"

#include <cmath>

namespace blockwright {
namespace {

// From memory of handbooks: flatten the corner over 4 to 6 cm to either side.
constexpr double kMostReach = 50.0;
// Reach at most this share of the way to the next corner or end.
constexpr double kShareOfLeg = 0.45;

struct Corner {
  Point before, at, after;

  [[nodiscard]] Vec in() const { return unit(at - before); }
  [[nodiscard]] Vec out() const { return unit(after - at); }
};

Corner corner_at(const std::vector<Point>& points, std::size_t i) {
  return {points[i - 1], points[i], points[i + 1]};
}

double reach_at(const Corner& corner) {
  const double room =
      std::fmin(distance(corner.before, corner.at), distance(corner.at, corner.after));
  return std::fmin(kMostReach, kShareOfLeg * room);
}

// A fair stroke between a leg and the apex.
CubicCurve stroke(Point from, Vec leaving, Point to, Vec arriving) {
  const double third = distance(from, to) / 3.0;
  return {from, from + third * leaving, to - third * arriving, to};
}

// The line by the corners, rounded; `apexes` gets how far along it passes them.
Path rounded(const std::vector<Point>& points, const std::vector<double>& reaches,
             std::vector<double>& apexes) {
  Path line;
  Point end = points.front();
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    const Corner corner = corner_at(points, i);
    const Vec along = unit(corner.in() + corner.out());
    const Point from = corner.at - reaches[i] * corner.in();
    const Point to = corner.at + reaches[i] * corner.out();
    line.add(Segment{end, from});
    line.add(stroke(from, corner.in(), corner.at, along));
    apexes.push_back(length(line));
    line.add(stroke(corner.at, along, to, corner.out()));
    end = to;
  }
  line.add(Segment{end, points.back()});
  return line;
}

}  // namespace

SeamLines rounded_seam(const std::vector<Point>& centre, const std::vector<Point>& side) {
  std::vector<double> reaches(centre.size(), 0.0);
  const std::size_t last = centre.size() - 2;
  for (std::size_t i = 1; i <= last; ++i) {
    reaches[i] = std::fmin(reach_at(corner_at(centre, i)), reach_at(corner_at(side, i)));
  }
  SeamLines lines;
  lines.centre = rounded(centre, reaches, lines.centre_apexes);
  lines.side = rounded(side, reaches, lines.side_apexes);
  lines.zone_from = distance(centre[0], centre[1]) - reaches[1];
  lines.zone_to = distance(centre[last], centre[last + 1]) - reaches[last];
  lines.bulge = std::fmax(largest_distance(lines.centre.curves(), Path::through(centre)),
                          largest_distance(lines.side.curves(), Path::through(side)));
  return lines;
}

}  // namespace blockwright
