#include "shape_checks.hpp"

#include "block_measures.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/geometry/box.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kSeamTolerance = 0.1;  // mm
constexpr double kSquare = 1.0;         // degrees
constexpr double kSmooth = 3.0;         // degrees
/// Published band for a block's armhole over the body's armscye (docs/sources.md).
constexpr double kLeastArmholeEase = 20.0;
constexpr double kMostArmholeEase = 90.0;
/// The least height of an armhole over the waist. Ours: far below any body's.
constexpr double kLeastOverWaist = 20.0;
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

void expect_inflections(Problems& problems, const Piece& piece, const char* edge, int most) {
  const int got = inflections({piece.edge(edge).path});
  if (got <= most) return;
  problems.push_back({Severity::Error, "check.curve", piece.name + "." + edge,
                      "the curve turns back " + std::to_string(got) + " times; at most " +
                          std::to_string(most) + " is fair",
                      kReport});
}

// How far along a seam a notch stands when darts are closed, from the start of the seam's first
// edge.
double sewn_place(const Pattern& pattern, const std::vector<EdgeOf>& side, const Piece& piece,
                  const Notch& notch) {
  double before = 0.0;
  for (const auto& [piece_name, edge_name] : side) {
    const Piece& part = pattern.piece(piece_name);
    const Edge& edge = part.edge(edge_name);
    if (piece_name == piece.name && edge_name == notch.edge) {
      return before + closed_from_cut(part, edge, notch.along);
    }
    before += sewn_length(part, edge);
  }
  return before;
}

bool lies_on(const std::vector<EdgeOf>& side, const std::string& piece, const std::string& edge) {
  return std::find(side.begin(), side.end(), EdgeOf{piece, edge}) != side.end();
}

// How far a notch and its mate on the other side of a seam miss each other.
double notch_distance(const Pattern& pattern, const Seam& seam, const Piece& piece,
                      const Notch& notch) {
  const Piece& other = pattern.piece(notch.mate_piece);
  for (const Notch& mate : other.notches) {
    if (mate.name != notch.name || mate.edge != notch.mate_edge) continue;
    const double here = sewn_place(pattern, seam.a, piece, notch);
    const double there = sewn_place(pattern, seam.b, other, mate);
    return std::abs((seam.b_runs_back ? sewn_length(pattern, seam.b) - there : there) - here);
  }
  return 0.0;
}

// Between the notches of a seam with ease the longer side is eased in, so mates may miss by as
// much.
void compare_notches(const Pattern& pattern, const Seam& seam, Problems& problems) {
  for (const auto& [piece_name, edge_name] : seam.a) {
    const Piece& piece = pattern.piece(piece_name);
    for (const Notch& notch : piece.notches) {
      if (notch.edge != edge_name || !lies_on(seam.b, notch.mate_piece, notch.mate_edge)) continue;
      const double gap = notch_distance(pattern, seam, piece, notch);
      if (gap > kSeamTolerance + std::abs(seam.ease_in)) {
        problems.push_back(off("check.seam", piece.name + "." + notch.name,
                               "the notch and its mate differ", gap, " mm"));
      }
    }
  }
}

}  // namespace

Problems broken_pieces(const Pattern& pattern) {
  Problems problems;
  for (const Piece& piece : pattern.pieces) {
    if (auto problem = find_problem(piece)) problems.push_back(*problem);
  }
  return problems;
}

Problems unequal_seams(const Pattern& pattern) {
  Problems problems;
  for (const Seam& seam : pattern.seams) {
    const double gap = sewn_length(pattern, seam.a) - sewn_length(pattern, seam.b) - seam.ease_in;
    if (std::abs(gap) > kSeamTolerance) {
      problems.push_back(off("check.seam", seam.name, "the seam's edges differ", gap, " mm"));
    }
    compare_notches(pattern, seam, problems);
  }
  return problems;
}

Problems check_pieces(const CheckInput& input) { return broken_pieces(input.pattern); }
Problems check_seams(const CheckInput& input) { return unequal_seams(input.pattern); }

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

Problems check_darts(const CheckInput& input) {
  Problems problems;
  for (const Piece& piece : input.pattern.pieces) {
    const auto cut = find_cut_dart(piece);
    if (!cut) continue;
    problems.push_back({Severity::Error, "check.dart", piece.name + "." + cut->edge,
                        "the " + cut->edge + " would cut through the " + cut->dart + " dart",
                        "upper_chest_girth, across_front, across_back, armscye_girth and the "
                        "girths at the bust contradict each other: take them again, and look at "
                        "the eases"});
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

namespace {

constexpr const char* kShortSide =
    "upper_arm_girth, armscye_girth, side_length, scye_depth, back_waist_length and the shoulder "
    "slope contradict each other: take them again, and look at the eases";

// The back armhole goes up from the underarm to the across point, on every body. The front's across
// point may lie lower while the bust dart is open.
Problems sunken_armhole(const Piece& back) {
  const double up = back.landmark("across_back_point").y - back.landmark("underarm_point").y;
  if (up > 0.0) return {};
  return {{Severity::Error, "check.armhole", "back.armhole",
           "the across-back point would lie " + fixed(-up, 1) + " mm below the underarm",
           kShortSide}};
}

Problems armhole_at_waist(const Piece& piece) {
  const double up =
      box_of(piece.edge("armhole").path).bottom - box_of(piece.edge("waist").path).top;
  if (up >= kLeastOverWaist) return {};
  return {{Severity::Error, "check.armhole", piece.name + ".armhole",
           "the armhole would reach down to " + fixed(std::fmax(up, 0.0), 1) +
               " mm above the waist; at least " + fixed(kLeastOverWaist, 0) +
               " mm are left on a block",
           kShortSide}};
}

}  // namespace

Problems check_armhole(const CheckInput& input) {
  using enum MeasurementName;
  const Piece &front = input.pattern.piece("front"), &back = input.pattern.piece("back");
  for (Problems problems :
       {sunken_armhole(back), armhole_at_waist(back), armhole_at_waist(front)}) {
    if (!problems.empty()) return problems;
  }
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
