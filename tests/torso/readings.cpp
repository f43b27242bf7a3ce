#include "torso/readings.hpp"

#include "torso/tape.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright::torso {
namespace {

// What a close-fitting toile should have on the whole girth: the middle of common practice, the
// same numbers as the program's default ease, kept here so that the yardstick does not move with
// it.
constexpr double kBustEase = 50.0, kWaistEase = 25.0;
/// 0 to 8 mm are usual on the neck base; the middle. Ours.
constexpr double kNeckEase = 4.0;
/// Underarm point below the armpit: 5 to 30 mm are right.
constexpr double kUnderarmDepth = 17.5;
/// Up to this share of the way from armpit to shoulder point an arm would fill the armhole, which
/// belongs off the body there. Ours.
constexpr double kArmAtArmhole = 0.35;

std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// Length of the cloth's level section, on the half body, mm.
double level_section(const Cloth& cloth, const Relaxed& rest, double z) {
  double length = 0.0;
  for (const ClothTriangle& t : cloth.triangles) {
    std::array<Vec3, 2> ends;
    std::size_t found = 0;
    for (std::size_t k = 0; k < 3 && found < 2; ++k) {
      const Vec3 &a = rest.at[idx(t.corners[k])], &b = rest.at[idx(t.corners[(k + 1) % 3])];
      if ((a.z() < z) == (b.z() < z)) continue;
      ends[found++] = a + (z - a.z()) / (b.z() - a.z()) * (b - a);
    }
    if (found == 2) length += (ends[1] - ends[0]).norm();
  }
  return length;
}

class Reader {
 public:
  Reader(const Cloth& cloth, const Relaxed& rest, const Torso& body)
      : cloth_(cloth), rest_(rest), body_(body) {}

  [[nodiscard]] const Vec3& at(int i) const { return rest_.at[idx(i)]; }
  [[nodiscard]] const std::vector<int>& edge(const char* name) const {
    return cloth_.edges.at(name);
  }
  [[nodiscard]] const Vec3& start(const char* name) const { return at(edge(name).front()); }
  [[nodiscard]] const Vec3& end(const char* name) const { return at(edge(name).back()); }

  [[nodiscard]] Vec3 bust_point() const {
    Vec3 sum = Vec3::Zero();
    const ClothTriangle& t = cloth_.triangles[idx(cloth_.bust_point.triangle)];
    for (std::size_t k = 0; k < 3; ++k) sum += cloth_.bust_point.share[k] * at(t.corners[k]);
    return sum;
  }
  [[nodiscard]] double most_off(const char* name, double above) const {
    double most = 0.0;
    for (const int i : edge(name)) {
      if (at(i).z() > above) most = std::max(most, body_.stand_off(at(i)));
    }
    return most;
  }
  [[nodiscard]] double edge_length(const char* name) const {
    double length = 0.0;
    const std::vector<int>& points = edge(name);
    for (std::size_t i = 1; i < points.size(); ++i)
      length += (at(points[i]) - at(points[i - 1])).norm();
    return length;
  }
  /// How far the shoulder seam lies to the front of the shoulder's ridge, on the whole.
  [[nodiscard]] double seam_forward() const {
    double sum = 0.0;
    const std::vector<int>& points = edge("front.shoulder");
    for (const int i : points) sum += at(i).y() - body_.ridge_y(at(i).x());
    return sum / static_cast<double>(points.size());
  }
  [[nodiscard]] double ease(double z) const {
    return 2.0 * level_section(cloth_, rest_, z) - level_girth(body_, z);
  }
  /// Too much ease at the waist, whole girth; where the waist edge lies on a part of the body that
  /// is larger than it was cut, what it is too tight by there, below 0.
  [[nodiscard]] double waist_ease() const {
    const double cut =
        2.0 * (cloth_.cut_lengths.at("front.waist") + cloth_.cut_lengths.at("back.waist"));
    std::vector<Vec2> skin;
    for (const char* name : {"front.waist", "back.waist"}) {
      for (const int i : edge(name)) {
        const Vec3 on_skin = body_.nearest_skin(at(i));
        skin.emplace_back(on_skin.x(), on_skin.y());
        skin.emplace_back(-on_skin.x(), on_skin.y());
      }
    }
    const double in_place = cut - hull_girth(std::move(skin));
    return in_place < 0.0 ? in_place : cut - level_girth(body_, 0.0) - kWaistEase;
  }

 private:
  const Cloth& cloth_;
  const Relaxed& rest_;
  const Torso& body_;
};

}  // namespace

const std::array<ReadingInfo, kReadingCount>& reading_table() {
  using enum ReadingName;
  static constexpr std::array<ReadingInfo, kReadingCount> kTable{{
      {BustPoint, "bp", 6.0, "bust point lower", "bust point higher"},
      {BustPointsApart, "bpw", 6.0, "bust points closer", "bust points apart"},
      {FrontWaist, "w.f", 6.0, "front waist longer", "front waist shorter"},
      {SideWaist, "w.s", 6.0, "longer below the bust", "shorter below the bust"},
      {BackWaist, "w.b", 6.0, "back waist longer", "back waist shorter"},
      {FrontNeck, "fn", 5.0, "front neck lower", "front neck higher"},
      {BackNeck, "bn", 5.0, "back neck lower", "back neck higher"},
      {SideNeck, "sn", 5.0, "neck narrower at the sides", "neck wider at the sides"},
      {NeckGirth, "ng", 6.0, "neck narrower", "neck wider"},
      {FrontNeckEdge, "fne", 6.0, "front neck edge taken in", ""},
      {BackNeckEdge, "bne", 6.0, "back neck edge taken in", ""},
      {ShoulderPoint, "sp", 6.0, "shoulder shorter", "shoulder longer"},
      {ShoulderPointOff, "spo", 8.0, "shoulder point lower", ""},
      {ShoulderSeam, "ss", 6.0, "shoulder seam back", "shoulder seam forward"},
      {Underarm, "ua", 12.5, "underarm higher", "underarm lower"},
      {FrontArmholeEdge, "fae", 10.0, "front armhole edge taken in", ""},
      {BackArmholeEdge, "bae", 10.0, "back armhole edge taken in", ""},
      {BustEase, "be", 20.0, "bust taken in at the side", "bust let out at the side"},
      {WaistEase, "we", 10.0, "waist taken in", "waist let out"},
      {SideSeam, "sw", 10.0, "side seam back", "side seam forward"},
  }};
  return kTable;
}

double excess(const FitReadings& readings, ReadingName name) {
  const double threshold = reading_table()[static_cast<std::size_t>(name)].threshold;
  return std::max(0.0, std::abs(readings[name]) - threshold);
}

double excess(const FitReadings& readings) {
  double sum = 0.0;
  for (const ReadingInfo& row : reading_table()) sum += excess(readings, row.name);
  return sum;
}

FitReadings read_off(const Cloth& cloth, const Relaxed& rest, const Torso& body) {
  using enum ReadingName;
  const Reader on(cloth, rest, body);
  const Landmarks& skin = body.landmarks();
  const Vec3 along = (skin.shoulder_point - skin.side_neck).normalized();
  FitReadings r;
  r[BustPoint] = on.bust_point().z() - skin.bust_point.z();
  r[BustPointsApart] = 2.0 * (on.bust_point().x() - skin.bust_point.x());
  r[FrontWaist] = on.start("front.waist").z();
  r[SideWaist] = on.end("front.waist").z();
  r[BackWaist] = on.start("back.waist").z();
  r[FrontNeck] = on.end("front.neckline").z() - skin.front_neck.z();
  r[BackNeck] = on.end("back.neckline").z() - skin.nape.z();
  r[SideNeck] = along.dot(on.end("front.shoulder") - skin.side_neck);
  r[NeckGirth] = 2.0 * (on.edge_length("front.neckline") + on.edge_length("back.neckline")) -
                 neck_base_girth(body) - kNeckEase;
  r[FrontNeckEdge] = on.most_off("front.neckline", -1e9);
  r[BackNeckEdge] = on.most_off("back.neckline", -1e9);
  r[ShoulderPoint] = along.dot(on.start("front.shoulder") - skin.shoulder_point);
  r[ShoulderPointOff] = body.stand_off(on.start("front.shoulder"));
  r[ShoulderSeam] = on.seam_forward();
  r[Underarm] = skin.armpit.z() - on.end("front.side").z() - kUnderarmDepth;
  const double above =
      skin.armpit.z() + kArmAtArmhole * (skin.shoulder_point.z() - skin.armpit.z());
  r[FrontArmholeEdge] = on.most_off("front.armhole", above);
  r[BackArmholeEdge] = on.most_off("back.armhole", above);
  r[BustEase] = on.ease(skin.bust_point.z()) - kBustEase;
  r[WaistEase] = on.waist_ease();
  r[SideSeam] = on.end("front.waist").y() - on.end("front.side").y();
  return r;
}

TriedOn tried_on(const Cloth& cloth, const Torso& body, const ClothKind& kind) {
  const Relaxed dropped = relaxed(cloth, body, kind, {.lifted = 15.0, .off = 20.0});
  const Relaxed blown = relaxed(cloth, body, kind, {.lifted = -5.0, .off = 45.0});
  const FitReadings one = read_off(cloth, dropped, body), two = read_off(cloth, blown, body);
  const bool first = dropped.energy <= blown.energy;
  TriedOn tried{first ? dropped : blown, first ? one : two, 0.0,
                std::abs(excess(one) - excess(two))};
  for (std::size_t i = 0; i < kReadingCount; ++i) {
    tried.spread = std::max(tried.spread, std::abs(one.mm[i] - two.mm[i]));
  }
  return tried;
}

}  // namespace blockwright::torso
