#include "blockwright/block/neckline.hpp"

#include "blockwright/block/reshape.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

// As the way to the corner grows shorter, the handles keep their share of it.
constexpr double kNecklineFollows = 0.0;

// How far the handle at the front neck point reaches to the corner of the front's end tangents, and
// by how much more the deeper the neck is against the corner's room. Ours: so the roundest
// necklines of the 1988 survey's women.
constexpr double kFrontCentreFullness = 0.83;
constexpr double kMoreIfDeep = 0.40;
constexpr double kUsualDeep = 0.60;
// A redrawn one reaches at least and at most so far. Ours.
constexpr double kLeastReach = 0.30;
constexpr double kMostReach = 0.97;
// The same for the back's handle at the side neck point. Ours, from the same.
constexpr double kBackSideFullness = 0.75;
// A handle that is free to give both necklines one curvature at the shoulder: what it reaches by
// itself, at least and at most. Ours, from the same.
struct FreeFullness {
  double natural, least, most;
};
// At the shoulder the back, which is the shorter, bends by so much more than the front. Ours, by
// eye: at 1 it is all but straight there and turns sharply half way.
constexpr double kBackBendsMore = 1.8;
constexpr FreeFullness kFrontSide{0.40, 0.20, 0.75};
constexpr FreeFullness kBackCentre{0.60, 0.35, 0.93};

// A finger's breadth of neckline, in mm.
constexpr double kEndOfNeckline = 15.0;

// The ways from a neckline's ends to the corner of its end tangents, where they lie ahead.
struct NeckCorner {
  double side = 0.0, centre = 0.0, sine = 1.0;
  // The curvature at the side neck point, from how far both handles reach.
  [[nodiscard]] double bend(double at_side, double at_centre) const {
    return 2.0 / 3.0 * (1.0 - at_centre) * centre * sine / (at_side * at_side * side * side);
  }
};

constexpr Vec kToCentre{-1.0, 0.0};

std::optional<NeckCorner> corner_of(const NecklineEnds& ends, Vec arriving = kToCentre) {
  const Vec leaving = unit(ends.leaving);
  const auto corner = lines_meet(ends.side_neck, leaving, ends.centre, arriving);
  if (!corner) return std::nullopt;
  const NeckCorner found{dot(*corner - ends.side_neck, leaving),
                         dot(ends.centre - *corner, arriving), std::abs(cross(leaving, arriving))};
  return found.side > 0.0 && found.centre > 0.0 ? std::optional(found) : std::nullopt;
}

double front_centre_fullness(const NeckCorner& corner) {
  return kFrontCentreFullness +
         kMoreIfDeep * (corner.side / (corner.side + corner.centre) - kUsualDeep);
}

CubicCurve neckline(const NecklineEnds& ends, double at_side, double at_centre) {
  return corner_curve(ends.side_neck, ends.leaving, ends.centre, kToCentre,
                      Ends{at_side, at_centre});
}

}  // namespace

Angle steepest_neckline(NeckSize size) {
  return Angle::radians(std::atan((1.0 - kNeckCornerRoom) * size.width / size.depth));
}

double neckline_room(Point from, Vec leaving, Point to, Vec arriving) {
  const auto corner = lines_meet(from, leaving, to, arriving);
  return corner ? dot(to - *corner, arriving) / dot(to - from, arriving) : 1.0;
}

Vec neckline_leaving(Point from, Vec wished, Point to, Vec arriving, double least) {
  if (neckline_room(from, wished, to, arriving) >= least) return wished;
  return unit(to - least * dot(to - from, arriving) * arriving - from);
}

double turn_at_end(const Path& neckline) {
  const double along = std::fmax(length(neckline) - kEndOfNeckline, 0.0);
  const Vec last = tangent_at_length(neckline, along), arrives = end_tangent(neckline);
  const double whole = turn_between(start_tangent(neckline), arrives).radians();
  return whole == 0.0 ? 0.0 : turn_between(last, arrives).radians() / whole;
}

Necklines necklines(const NecklineEnds& front, const NecklineEnds& back) {
  const auto f = corner_of(front), b = corner_of(back);
  if (!f || !b) {
    return {neckline(front, kFrontSide.natural, kFrontCentreFullness),
            neckline(back, kBackSideFullness, kBackCentre.natural)};
  }
  const double at_front = front_centre_fullness(*f);
  const auto front_bend = [&](double side) { return f->bend(side, at_front); };
  const auto back_bend = [&](double centre) {
    return b->bend(kBackSideFullness, centre) / kBackBendsMore;
  };
  // The front's: the geometric mean of what each has by itself, within what both can have.
  const double mean = std::sqrt(front_bend(kFrontSide.natural) * back_bend(kBackCentre.natural));
  const double least = std::fmax(front_bend(kFrontSide.most), back_bend(kBackCentre.most));
  const double most = std::fmin(front_bend(kFrontSide.least), back_bend(kBackCentre.least));
  const double bend = std::fmax(std::fmin(mean, most), least);
  const double at_side = std::sqrt(front_bend(1.0) / bend);
  const double at_back = 1.0 - bend / back_bend(0.0);
  return {
      neckline(front, std::clamp(at_side, kFrontSide.least, kFrontSide.most), at_front),
      neckline(back, kBackSideFullness, std::clamp(at_back, kBackCentre.least, kBackCentre.most))};
}

CubicCurve reshaped_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                             Vec arriving) {
  return bent_one_way(old, from, unit(leaving), to, unit(arriving), kNecklineFollows);
}

CubicCurve reshaped_front_neckline(const CubicCurve& old, Point from, Vec leaving, Point to,
                                   Vec arriving) {
  CubicCurve curve = reshaped_neckline(old, from, leaving, to, arriving);
  const Vec arrived = unit(old.p3 - old.p2), arrives = unit(arriving);
  const auto was = corner_of({old.p0, old.p1 - old.p0, old.p3}, arrived);
  const auto is = corner_of({from, leaving, to}, arrives);
  if (!was || !is) return curve;
  const double more = front_centre_fullness(*is) - front_centre_fullness(*was);
  const double reaches = distance(old.p2, old.p3) / was->centre + more;
  curve.p2 = to - std::clamp(reaches, kLeastReach, kMostReach) * is->centre * arrives;
  return curve;
}

}  // namespace blockwright
