#include "torso/tape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace blockwright::torso {
namespace {

/// The taut line over points from the first to the last: the side of their convex hull that lies to
/// the left of it. Returns its length.
double hull_length(std::vector<Vec2> points) {
  std::vector<Vec2> hull;
  for (const Vec2& p : points) {
    while (hull.size() >= 2) {
      const Vec2 a = hull[hull.size() - 1] - hull[hull.size() - 2];
      const Vec2 b = p - hull[hull.size() - 1];
      if (a.x() * b.y() - a.y() * b.x() < 0.0) break;
      hull.pop_back();
    }
    hull.push_back(p);
  }
  double length = 0.0;
  for (std::size_t i = 1; i < hull.size(); ++i) length += (hull[i] - hull[i - 1]).norm();
  return length;
}

std::vector<Vec2> hull_of(std::vector<Vec2> points) {
  std::ranges::sort(points, [](const Vec2& a, const Vec2& b) {
    return a.x() != b.x() ? a.x() < b.x() : a.y() < b.y();
  });
  const auto turn = [](const Vec2& o, const Vec2& a, const Vec2& b) {
    return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
  };
  std::vector<Vec2> hull;
  for (int side = 0; side < 2; ++side) {
    const std::size_t start = hull.size();
    for (const Vec2& p : points) {
      while (hull.size() >= start + 2 && turn(hull[hull.size() - 2], hull.back(), p) <= 0.0) {
        hull.pop_back();
      }
      hull.push_back(p);
    }
    hull.pop_back();
    std::ranges::reverse(points);
  }
  return hull;
}

/// Half the width across front or back at a level, from the centre to the armhole line, the tape
/// spanning hollows.
double half_across(const Torso& body, double z, double to_x, bool front) {
  std::vector<Vec2> side = body.section(z);
  if (!front) std::ranges::reverse(side);
  std::vector<Vec2> points;
  for (std::size_t i = 0; i + 1 < side.size(); ++i) {
    const Vec2 a = side[i], b = side[i + 1];
    if (a.x() > to_x) break;
    points.push_back(a);
    if (b.x() > to_x) {
      points.push_back(a + (to_x - a.x()) / (b.x() - a.x()) * (b - a));
      break;
    }
  }
  std::vector<Vec2> whole;
  for (std::size_t i = points.size(); i-- > 1;) whole.emplace_back(-points[i].x(), points[i].y());
  whole.insert(whole.end(), points.begin(), points.end());
  // Left to right with the body below: the taut line turns clockwise only.
  if (!front) {
    for (Vec2& p : whole) p.y() = -p.y();
  }
  return 0.5 * hull_length(whole);
}

}  // namespace

double taut_length(const Torso& body, const Vec3& from, const Vec3& to, TapeHeld held) {
  constexpr int kParts = 28, kSweeps = 900;
  std::vector<Vec3> tape;
  Vec3 out;
  for (int i = 0; i <= kParts; ++i) {
    Vec3 p = from + (to - from) * i / kParts;
    // Inside the body it is brought out away from the middle.
    if (i > 0 && i < kParts && body.distance(p) < -8.0) {
      const Vec3 middle(0.0, body.middle(p.z()), p.z());
      Vec3 away = p - middle;
      if (held == TapeHeld::InPlane) away.x() = 0.0;
      away.normalize();
      while (body.distance(p) < 0.0) p += 4.0 * away;
    }
    tape.push_back(p);
  }
  for (int sweep = 0; sweep < kSweeps; ++sweep) {
    for (int i = 1; i < kParts; ++i) {
      const auto k = static_cast<std::size_t>(i);
      tape[k] = 0.5 * (tape[k - 1] + tape[k + 1]);
      const double inside = body.distance(tape[k], out);
      if (inside >= 0.0) continue;
      if (held == TapeHeld::InPlane) out = Vec3(0.0, out.y(), out.z()) / (1.0 - out.x() * out.x());
      tape[k] -= inside * out;
    }
  }
  double length = 0.0;
  for (std::size_t i = 1; i < tape.size(); ++i) length += (tape[i] - tape[i - 1]).norm();
  return length;
}

double hull_girth(std::vector<Vec2> points) {
  const std::vector<Vec2> hull = hull_of(std::move(points));
  double girth = 0.0;
  for (std::size_t i = 0; i < hull.size(); ++i)
    girth += (hull[(i + 1) % hull.size()] - hull[i]).norm();
  return girth;
}

double level_girth(const Torso& body, double z) {
  std::vector<Vec2> points = body.section(z);
  const std::size_t half = points.size();
  for (std::size_t i = 0; i < half; ++i) points.emplace_back(-points[i].x(), points[i].y());
  return hull_girth(std::move(points));
}

double neck_base_girth(const Torso& body) {
  const Landmarks& at = body.landmarks();
  return 2.0 * (taut_length(body, at.nape, at.side_neck) +
                taut_length(body, at.side_neck, at.front_neck));
}

double armscye_girth(const Torso& body) {
  const Landmarks& at = body.landmarks();
  const Vec3 down =
      Vec3(at.armpit.x() - 4.0, at.shoulder_point.y(), at.armpit.z()) - at.shoulder_point;
  std::vector<Vec2> loop{{at.shoulder_point.y(), 0.0}};
  for (int i = 1; i <= 16; ++i) {
    const Vec3 line = at.shoulder_point + down * i / 16.0;
    const double middle = body.middle(line.z());
    for (const double side : {-1.0, 1.0}) {
      double in = 0.0, outside = 250.0;
      for (int k = 0; k < 40; ++k) {
        const double y = 0.5 * (in + outside);
        (body.distance({line.x(), middle + side * y, line.z()}) < 0.0 ? in : outside) = y;
      }
      loop.emplace_back(middle + side * in, down.norm() * i / 16.0);
    }
  }
  return hull_girth(std::move(loop));
}

double taped(const Session& session, MeasurementName name) {
  return session.tape[name]->median().number();
}

Session tape_session(const Torso& body) {
  using enum MeasurementName;
  const Landmarks& at = body.landmarks();
  Session session{"2026-03-14", {}, {}};
  const auto put = [&](MeasurementName name, double value) {
    session.tape[name] = Readings{{measure_of(name, std::round(10.0 * value) / 10.0)}};
  };
  const double armpit = at.armpit.z(), across = 0.5 * (at.shoulder_point.z() + armpit);
  put(BustGirth, level_girth(body, at.bust_point.z()));
  put(UpperChestGirth, level_girth(body, armpit));
  put(UnderbustGirth, level_girth(body, body.underbust_level()));
  put(WaistGirth, level_girth(body, 0.0));
  put(NeckBaseGirth, neck_base_girth(body));
  const double armscye = armscye_girth(body);
  put(ArmscyeGirth, armscye);
  // Armscye over upper arm, the survey's mean ratio (Gordon et al. 1989, computed).
  put(UpperArmGirth, armscye / 1.277);
  put(ShoulderLength, taut_length(body, at.side_neck, at.shoulder_point));
  const Vec3 along = at.shoulder_point - at.side_neck;
  put(ShoulderSlope, std::asin(-along.z() / along.norm()) * 180.0 / std::numbers::pi);
  put(FrontShoulderSlant, taut_length(body, at.shoulder_point, at.front_waist));
  put(BackShoulderSlant, taut_length(body, at.shoulder_point, at.back_waist));
  put(BackWaistLength, taut_length(body, at.nape, at.back_waist, TapeHeld::InPlane));
  put(FrontWaistLength, taut_length(body, at.front_neck, at.front_waist, TapeHeld::InPlane));
  const double to_bust = taut_length(body, at.side_neck, at.bust_point);
  Vec3 under_bust(at.bust_point.x(), at.front_waist.y() + 120.0, 0.0);
  for (int i = 0; i < 400 && body.distance(under_bust) > 0.01; ++i) under_bust.y() -= 0.5;
  put(SideNeckToBustPoint, to_bust);
  put(SideNeckToWaist, to_bust + taut_length(body, at.bust_point, under_bust, TapeHeld::InPlane));
  put(BustPointWidth, 2.0 * at.bust_point.x());
  // The back's armhole line lies a little farther out than the front's: arms reach forward. Ours.
  put(AcrossBack, 2.0 * half_across(body, across, body.armhole_line(across) + 3.0, false));
  put(AcrossFront, 2.0 * half_across(body, across, body.armhole_line(across) - 3.0, true));
  put(SideLength, taut_length(body, at.armpit, at.side_waist));
  const Vec3 spine(0.0, -400.0, armpit);
  Vec3 level = spine;
  while (body.distance(level) > 0.05)
    level.y() += 0.4 * std::min(body.distance(level), 20.0) + 0.02;
  put(ScyeDepth, taut_length(body, at.nape, level, TapeHeld::InPlane));
  return session;
}

}  // namespace blockwright::torso
