#include "blockwright/dart/truing.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/geometry/path.hpp"
#include "darts/pictures.hpp"

#include <cmath>
#include <stdexcept>

namespace blockwright_pictures {

using namespace blockwright;

namespace {

constexpr double kMouthScale = 1.7;
constexpr double kMouthLeft = 125.0, kMouthsApart = 190.0;  // of the four drawings
constexpr double kShown = 58.0;  // of the seam beside the mouth and of the legs, mm

// What lies about a dart's mouth.
struct DrawnMouth {
  Dart dart;
  Path before, after;  // the seam, towards the mouth and away from it
  Path across;         // the cut edge from leg end to leg end
  [[nodiscard]] Angle stitched() const {
    return turn_between(dart.legs[0] - dart.point, dart.legs[1] - dart.point);
  }
};

DrawnMouth mouth_of(const Piece& piece, const std::string& name, double shown) {
  const Dart& dart = piece.dart(name);
  const Path& path = piece.edge(dart.edge).path;
  const double in = nearest(path, dart.legs[0]).along, out = nearest(path, dart.legs[1]).along;
  return {dart, sub_path(path, {in - shown, in}), sub_path(path, {out, out + shown}),
          sub_path(path, {in, out})};
}

Point down_leg(const Dart& dart, int leg) {
  const Point end = dart.legs[static_cast<std::size_t>(leg)];
  return end + kShown * unit(dart.point - end);
}

void draw_leg(const Sketch& s, const Dart& dart, int leg, Look look) {
  s.line(dart.legs[static_cast<std::size_t>(leg)], down_leg(dart, leg), look);
}

Vec centre_line(const Dart& dart) {
  return unit(midpoint(dart.legs[0], dart.legs[1]) - dart.point);
}

void draw_open(const Sketch& s, const DrawnMouth& m) {
  s.line(m.before, Look::New);
  s.line(m.after, Look::New);
  draw_leg(s, m.dart, 0, Look::New);
  draw_leg(s, m.dart, 1, Look::New);
  const Point middle = midpoint(m.dart.legs[0], m.dart.legs[1]);
  s.line(middle + 10.0 * centre_line(m.dart), middle - kShown * centre_line(m.dart), Look::Compass);
}

// Folded towards the second leg's side or the first: that side lies still, the other is turned on
// to it, and the fold lies under it.
void draw_folded(const Sketch& s, const DrawnMouth& m) {
  const bool first = m.dart.pressed_to == Leg::First;
  const Placement turn = Placement::turn(first ? -m.stitched() : m.stitched(), m.dart.point);
  s.line(first ? m.before : m.after, Look::New);
  s.line(placed(first ? m.after : m.before, turn), Look::New);
  draw_leg(s, m.dart, first ? 0 : 1, Look::New);
  const Point end = m.dart.inner_leg();
  const Placement under = Placement::mirror_in(end, unit(end - m.dart.point));
  const Point fold = under(m.dart.peak);
  s.line(fold, fold + kShown * under(-centre_line(m.dart)), Look::Compass);
}

void draw_unfolded(const Sketch& s, const DrawnMouth& m) {
  draw_open(s, m);
  s.line(m.across, Look::New);
}

Path closed_seam(const DrawnMouth& m) {
  Path seam = m.before;
  append(seam, placed(m.after, Placement::turn(-m.stitched(), m.dart.point)), 1e-3);
  return seam;
}

// The seam in a frame whose x runs along the first of them and whose heights are ten times as
// large.
constexpr double kHeights = 10.0;

Path raised(const Path& seam, const Path& chord_of) {
  const Point origin = chord_of.start();
  const Vec along = unit(chord_of.end() - origin);
  std::vector<Point> points;
  constexpr int kSteps = 60;
  for (int i = 0; i <= kSteps; ++i) {
    const Vec p = point_at_length(seam, length(seam) * i / kSteps) - origin;
    points.push_back({dot(p, along), -kHeights * cross(along, p)});
  }
  return Path::through(points);
}

Point middle_of(const Path& seam) { return point_at_length(seam, 0.5 * length(seam)); }

Angle magnitude(Angle angle) { return angle.radians() < 0.0 ? -angle : angle; }

void label_blending(const Sketch& s, const Path& hollow, const Path& smooth) {
  const Point joint = middle_of(smooth);
  s.point(joint, {0.0, -16.0}, "the legs' ends meet here and stay");
  s.label(joint, {0.0, 70.0}, "outside");
  s.label(joint, {0.0, -60.0}, "cloth");
  s.label(between(hollow.start(), joint, 0.45), {12.0, 8.0}, "dashed: closed, not yet blended");
  s.label(smooth.start(), {4.0, 12.0}, "shoulder point's side");
  s.label(smooth.end(), {-4.0, 12.0}, "neck's side");
}

const BlendedEdge& blending_of(const TruedPattern& trued, const std::string& piece,
                               const std::string& dart) {
  for (const BlendedEdge& blended : trued.blended) {
    if (blended.piece == piece && blended.dart == dart) return blended;
  }
  throw std::runtime_error("nothing was blended at " + dart);
}

}  // namespace

void draw_peak(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "ondine-marsh");
  const PivotMove move{"front.shoulder", "front.french", 1.0, {}, {}};
  const Pattern down = after(person, {move});
  const Pattern up = after(person, {move, PressMove{"front.french", PressMove::Towards::Up}});
  const DrawnMouth m = mouth_of(true_darts(down).pattern.piece("front"), "french", kShown);
  const DrawnMouth other = mouth_of(true_darts(up).pattern.piece("front"), "french", kShown);
  const Point middle = midpoint(m.dart.legs[0], m.dart.legs[1]);
  const auto sketch = [&](int column) {
    return Sketch(d, kMouthScale, {kMouthLeft + column * kMouthsApart, 215.0}, middle);
  };
  draw_open(sketch(0), m);
  draw_folded(sketch(1), m);
  draw_unfolded(sketch(2), m);
  draw_unfolded(sketch(3), other);
  const char* const words[] = {"Open", "Fold down, cut", "Unfold", "If it is pressed up"};
  const char* const captions[] = {"the side seam at a dart;\ndashed: the fold",
                                  "the leg is closed; cut straight\nalong the seam",
                                  "the peak is on the cloth", "another peak: press as you trued"};
  for (int i = 0; i < 4; ++i) {
    const double left = kMouthLeft - 95.0 + i * kMouthsApart;
    d.heading({left, kHeadingLine}, words[i]);
    d.label({left - 1.0, kCaptionLine}, {1.0, 0.0}, captions[i]);
  }
}

void draw_blending(Diagram& d, const std::string& wardrobe) {
  const Person person = person_of(wardrobe, "bronislawa-slizewicz");
  const TruedPattern trued = true_darts(person.block);
  const DrawnMouth old = mouth_of(person.block.piece("front"), "shoulder", kBlendingReach);
  const DrawnMouth now = mouth_of(trued.pattern.piece("front"), "shoulder", kBlendingReach);
  const BlendedEdge& blended = blending_of(trued, "front", "shoulder");
  const Path before = closed_seam(old);
  const Sketch s(d, 5.5, {60.0, 330.0});
  const Path hollow = raised(before, before);
  const Path smooth = raised(closed_seam(now), before);
  s.line(hollow, Look::Compass);
  s.line(smooth, Look::New);
  label_blending(s, hollow, smooth);
  head(d, 0, "The shoulder seam across its closed dart, heights drawn ten times",
       "the closed seam would turn by " + degrees(magnitude(blended.kink)) + "; the line moves " +
           fixed(blended.moved, 1) + " mm at most, within 6 cm to either side");
}

}  // namespace blockwright_pictures
