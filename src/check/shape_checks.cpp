#include "shape_checks.hpp"

#include "block_measures.hpp"
#include "blockwright/base/number_text.hpp"

#include <cmath>

namespace blockwright {
namespace {

constexpr double kSeamTolerance = 0.1;  // mm
constexpr double kSquare = 1.0;         // degrees
constexpr double kSmooth = 3.0;         // degrees
/// A neckline under a steep shoulder gives up this much of its right angle at most; the joined seam
/// stays smooth.
constexpr double kStraight = 1e-6;  // 1/mm: a bend of a kilometre's radius is straight
/// Published band for a block's armhole over the body's armscye (docs/sources.md).
constexpr double kLeastArmholeEase = 20.0;
constexpr double kMostArmholeEase = 90.0;
constexpr const char* kReport = "do not cut; please report it with the client file";

Problem off(const char* code, std::string where, const std::string& what, double by,
            const std::string& unit) {
  return {Severity::Error, code, std::move(where), what + " by " + fixed(by, 2) + unit, kReport};
}

double degrees_between(Vec a, Vec b) { return std::abs(turn_between(a, b).degrees()); }

/// Interior angle at the corner where `edge` ends and the next edge of the outline begins.
double corner(const Piece& piece, std::string_view edge, std::string_view next) {
  return degrees_between(-end_tangent(piece.edge(edge).path), start_tangent(piece.edge(next).path));
}

void expect(Problems& problems, const char* where, double got, double wanted, double tolerance) {
  if (std::abs(got - wanted) <= tolerance) return;
  problems.push_back(off("check.angle", where,
                         "the angle is " + fixed(got, 2) + ", off " + fixed(wanted, 0),
                         got - wanted, " degrees"));
}

int inflections(const Path& path) {
  constexpr int samples = 48;
  int changes = 0;
  double last = 0.0;
  for (const Curve& curve : path.curves()) {
    for (int i = 0; i <= samples; ++i) {
      const double bend = curvature_at(curve, static_cast<double>(i) / samples);
      if (std::abs(bend) < kStraight) continue;
      if (last * bend < 0.0) ++changes;
      last = bend;
    }
  }
  return changes;
}

void expect_inflections(Problems& problems, const Piece& piece, const char* edge, int most) {
  const int got = inflections(piece.edge(edge).path);
  if (got <= most) return;
  problems.push_back({Severity::Error, "check.curve", piece.name + "." + edge,
                      "the curve turns back " + std::to_string(got) + " times; at most " +
                          std::to_string(most) + " is fair",
                      kReport});
}

double sewn_place(const Piece& piece, const Notch& notch) {
  return closed_from_cut(piece, piece.edge(notch.edge), notch.along);
}

double notch_distance(const Pattern& pattern, const Notch& notch, const Piece& piece) {
  const Piece& other = pattern.piece(notch.mate_piece);
  for (const Notch& mate : other.notches) {
    const bool mates = mate.name == notch.name && mate.edge == notch.mate_edge;
    if (mates) return std::abs(sewn_place(other, mate) - sewn_place(piece, notch));
  }
  return 0.0;
}

}  // namespace

Problems check_pieces(const CheckInput& input) {
  Problems problems;
  for (const Piece& piece : input.pattern.pieces) {
    if (auto problem = find_problem(piece)) problems.push_back(*problem);
  }
  return problems;
}

Problems check_seams(const CheckInput& input) {
  Problems problems;
  for (const Seam& seam : input.pattern.seams) {
    const double gap =
        sewn_length(input.pattern, seam.a) - sewn_length(input.pattern, seam.b) - seam.ease_in;
    if (std::abs(gap) > kSeamTolerance) {
      problems.push_back(off("check.seam", seam.name, "the seam's edges differ", gap, " mm"));
    }
  }
  for (const Piece& piece : input.pattern.pieces) {
    for (const Notch& notch : piece.notches) {
      if (notch.mate_piece.empty()) continue;
      const double gap = notch_distance(input.pattern, notch, piece);
      if (gap > kSeamTolerance) {
        problems.push_back(off("check.seam", piece.name + "." + notch.name,
                               "the notch and its mate differ", gap, " mm"));
      }
    }
  }
  return problems;
}

Problems check_angles(const CheckInput& input) {
  const Piece& front = input.pattern.piece("front");
  const Piece& back = input.pattern.piece("back");
  Problems problems;
  expect(problems, "front centre and waist", corner(front, "centre_front", "waist"), 90.0, kSquare);
  expect(problems, "back centre and waist", corner(back, "centre_back", "waist"), 90.0, kSquare);
  expect(problems, "front centre and neckline", corner(front, "neckline", "centre_front"), 90.0,
         kSquare);
  expect(problems, "back centre and neckline", corner(back, "neckline", "centre_back"), 90.0,
         kSquare);
  expect(problems, "neckline at the closed shoulder",
         corner(front, "shoulder", "neckline") + corner(back, "shoulder", "neckline"), 180.0,
         kSmooth);
  expect(problems, "armhole at the closed shoulder",
         corner(front, "armhole", "shoulder") + corner(back, "armhole", "shoulder"), 180.0,
         kSmooth);
  expect(problems, "armhole at the closed side",
         corner(front, "side", "armhole") + corner(back, "side", "armhole"), 180.0, kSmooth);
  expect(problems, "waist at the closed side",
         corner(front, "waist", "side") + corner(back, "waist", "side"), 180.0, kSmooth);
  return problems;
}

Problems check_curves(const CheckInput& input) {
  Problems problems;
  for (const char* name : {"front", "back"}) {
    const Piece& piece = input.pattern.piece(name);
    expect_inflections(problems, piece, "neckline", 0);
    expect_inflections(problems, piece, "armhole", 1);
  }
  return problems;
}

Problems check_levels(const CheckInput& input) {
  Problems problems;
  double over_waist[2] = {0.0, 0.0};
  int i = 0;
  for (const char* name : {"front", "back"}) {
    const Piece& piece = input.pattern.piece(name);
    for (const BalanceLine& line : piece.balance_lines) {
      if (line.name != "bust_line") continue;
      over_waist[i] = line.path.end().y - piece.landmark("side_waist_point").y;
      const double tilt = line.path.end().y - line.path.start().y;
      if (std::abs(tilt) > kSeamTolerance) {
        problems.push_back(off("check.level", piece.name, "the bust line tilts", tilt, " mm"));
      }
    }
    ++i;
  }
  const double gap = over_waist[0] - over_waist[1];
  if (std::abs(gap) > kSeamTolerance) {
    problems.push_back(
        off("check.level", "side", "the bust lines of front and back miss", gap, " mm"));
  }
  return problems;
}

Problems check_armhole(const CheckInput& input) {
  using enum MeasurementName;
  const double more = BlockMeasures(input.pattern).armhole() - input.body[ArmscyeGirth];
  const double asked = input.ease[ArmscyeGirth];
  if (more >= std::fmin(kLeastArmholeEase, asked) && more <= std::fmax(kMostArmholeEase, asked)) {
    return {};
  }
  return {{Severity::Error, "check.armhole", "armscye_girth",
           "the armhole would be " + fixed(more, 1) +
               " mm longer than the armscye; a block's armhole is 20 to 90 mm longer",
           "armscye_girth, side_length, side_neck_to_waist and the shoulder slope contradict each "
           "other: take them, again where they were taken"}};
}

}  // namespace blockwright
