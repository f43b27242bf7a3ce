#include "blockwright/base/number_text.hpp"
#include "blockwright/block/corners.hpp"
#include "blockwright/geometry/box.hpp"
#include "checks.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kSeamTolerance = 0.1;  // mm
constexpr Length kMostOff = Length::mm(kSeamTolerance);
/// How much longer than the armscye a block's armhole is: textbook blocks at bust 88 cm are 40 to
/// 65 mm longer than the survey's armscye there (from memory, computed), and the band is wider by
/// 20 to 25 mm to either side. Ours.
constexpr double kLeastArmholeEase = 20.0;
constexpr double kMostArmholeEase = 90.0;
/// ... and where the armscye is larger, in proportion. Ours.
constexpr double kMostArmholeShare = 0.24;
/// The least height of an armhole over the waist. Ours: far below any body's.
constexpr double kLeastOverWaist = 20.0;
/// How far the front armhole may hang below its underarm point: a sewn underarm that leans to the
/// back lets it dip a little. Ours.
constexpr double kMostDip = 3.0;
/// The least armhole width, of the upper arm girth: an arm is about 0.32 of its girth across, and
/// cloth gives. Ours.
constexpr double kLeastWidthOfArm = 0.30;
constexpr const char* kReport = "do not cut; please report it with the client file";

Problem off(const char* code, std::string where, const std::string& what, const Wording& by,
            Measure most) {
  return {.severity = Severity::Error,
          .code = code,
          .where = std::move(where),
          .message = what + " by " + by + "; at most " + most + " is allowed",
          .hint = kReport,
          .limit = {.most = most}};
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
      const EdgeOf mate{notch.mate_piece, notch.mate_edge};
      if (notch.edge != edge_name || std::ranges::count(seam.b, mate) == 0) continue;
      const double gap = notch_distance(pattern, seam, piece, notch);
      if (gap > kSeamTolerance + std::abs(seam.ease_in)) {
        problems.push_back(off("check.seam", piece.name + "." + notch.name,
                               "the notch and its mate differ", Length::mm(gap),
                               Length::mm(kSeamTolerance + std::abs(seam.ease_in))));
      }
    }
  }
}

double bust_line_over_side_waist(const Piece& piece) {
  const BalanceLine* line = find_line(piece, LineUse::Bust);
  return line == nullptr ? 0.0 : line->path.end().y - corner_point(piece, Corner::SideWaist).y;
}

constexpr const char* kNarrow =
    "upper_chest_girth, across_back, across_front, bust_girth and upper_arm_girth contradict each "
    "other: take them again, and look at the eases";
constexpr const char* kSharpNeck =
    "neck_base_girth, front_waist_length, side_neck_to_waist, side_neck_to_bust_point and the "
    "shoulder slants contradict each other: take them again";

constexpr const char* kShortSide =
    "upper_arm_girth, armscye_girth, side_length, scye_depth, back_waist_length and the shoulder "
    "slope contradict each other: take them again, and look at the eases";

// The back armhole goes up from the underarm to the across point, on every body. The front's across
// point may lie lower while the bust dart is open.
Problems sunken_armhole(const Piece& back) {
  const double up = across_point(back).y - corner_point(back, Corner::Underarm).y;
  if (up > 0.0) return {};
  return {
      {Severity::Error, "check.armhole", back.name + "." + part_of(back, BlockEdge::Armhole).name,
       "the across-back point would lie " + Length::mm(-up) + " below the underarm", kShortSide}};
}

Problems armhole_at_waist(const Piece& piece) {
  const Edge& armhole = part_of(piece, BlockEdge::Armhole);
  const double up = box_of(armhole.path).bottom - box_of(part_of(piece, BlockEdge::Waist).path).top;
  if (up >= kLeastOverWaist) return {};
  return {{.severity = Severity::Error,
           .code = "check.armhole",
           .where = piece.name + "." + armhole.name,
           .message = "the armhole would reach down to " + Length::mm(std::fmax(up, 0.0)) +
                      " above the waist; at least " + Length::mm(kLeastOverWaist) +
                      " are left on a block",
           .hint = kShortSide,
           .limit = {.least = Length::mm(kLeastOverWaist)}}};
}

// The front armhole goes up from the underarm too; with the bust dart open nearly all of it turns
// down. Lower than its underarm point no arm would fit it.
Problems hanging_armhole(const Piece& front) {
  const Edge& armhole = part_of(front, BlockEdge::Armhole);
  const double down = armhole.path.start().y - box_of(armhole.path).bottom;
  if (down <= kMostDip) return {};
  return {{.severity = Severity::Error,
           .code = "check.armhole",
           .where = front.name + "." + armhole.name,
           .message = "the front armhole would hang " + Length::mm(down) +
                      " below the underarm; at most " + Length::mm(kMostDip) + " is allowed",
           .hint = kNarrow,
           .limit = {.most = Length::mm(kMostDip)}}};
}

Problems narrow_armhole(const CheckInput& input) {
  const double width = armhole_width(input.pattern);
  const double least = kLeastWidthOfArm * input.body.length(MeasurementName::UpperArmGirth).mm();
  if (width >= least) return {};
  return {{.severity = Severity::Error,
           .code = "check.armhole",
           .where = "upper_chest_girth",
           .message = "the armhole would be " + Length::mm(width) +
                      " wide between the across points; the arm that goes through it needs " +
                      Length::mm(least),
           .hint = kNarrow,
           .limit = {.least = Length::mm(least)}}};
}

Problems sharp_curve(const Piece& piece, const Edge& edge, const KindEdge& kind) {
  if (kind.least_radius == 0.0) return {};
  const double radius = least_radius(edge.path);
  if (radius >= kind.least_radius) return {};
  return {{.severity = Severity::Error,
           .code = kind.part == BlockEdge::Armhole ? "check.armhole" : "check.curve",
           .where = piece.name + "." + edge.name,
           .message = "the " + edge.name + " would bend within a radius of " + Length::mm(radius) +
                      "; at least " + Length::mm(kind.least_radius) + " is fair",
           .hint = kind.part == BlockEdge::Armhole ? kNarrow : kSharpNeck,
           .limit = {.least = Length::mm(kind.least_radius)}}};
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
      problems.push_back(
          off("check.seam", seam.name, "the seam's edges differ", Length::mm(gap), kMostOff));
    }
    compare_notches(pattern, seam, problems);
  }
  return problems;
}

Problems check_angles(const CheckInput& input) {
  Problems problems;
  for (const BlockCorner& corner : block_corners(input.pattern)) {
    if (std::abs(corner.off()) <= corner.within) continue;
    problems.push_back(
        off("check.angle", corner.where,
            "the angle is " + fixed(corner.degrees, 2) + ", off " + fixed(corner.wanted, 0),
            fixed(corner.off(), 2) + " degrees", Measure::degrees(corner.within)));
  }
  return problems;
}

Problems check_curves(const CheckInput& input) {
  Problems problems;
  for (const Piece& piece : input.pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      const KindEdge* kind = kind_edge(piece, edge.name);
      if (kind == nullptr) continue;
      for (const Problem& sharp : sharp_curve(piece, edge, *kind)) problems.push_back(sharp);
      if (!kind->most_bends) continue;
      const int got = inflections({edge.path});
      if (got <= *kind->most_bends) continue;
      problems.push_back({Severity::Error, "check.curve", piece.name + "." + edge.name,
                          "the curve turns back " + std::to_string(got) + " times; at most " +
                              std::to_string(*kind->most_bends) + " is fair",
                          kReport});
    }
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
  for (const Piece& piece : input.pattern.pieces) {
    const BalanceLine* line = find_line(piece, LineUse::Bust);
    if (line == nullptr) continue;
    const double tilt = line->path.end().y - line->path.start().y;
    if (std::abs(tilt) <= kSeamTolerance) continue;
    problems.push_back(
        off("check.level", piece.name, "the bust line tilts", Length::mm(tilt), kMostOff));
  }
  const double gap = bust_line_over_side_waist(piece_of(input.pattern, kBodiceFront)) -
                     bust_line_over_side_waist(piece_of(input.pattern, kBodiceBack));
  if (std::abs(gap) > kSeamTolerance) {
    problems.push_back(off("check.level", "side", "the bust lines of front and back miss",
                           Length::mm(gap), kMostOff));
  }
  return problems;
}

Problems check_armhole(const CheckInput& input) {
  using enum MeasurementName;
  const Piece& front = piece_of(input.pattern, kBodiceFront);
  const Piece& back = piece_of(input.pattern, kBodiceBack);
  for (Problems problems : {sunken_armhole(back), armhole_at_waist(back), armhole_at_waist(front),
                            hanging_armhole(front), narrow_armhole(input)}) {
    if (!problems.empty()) return problems;
  }
  const double more =
      half_length(input.pattern, BlockEdge::Armhole) - input.body.length(ArmscyeGirth).mm();
  const double asked = input.ease.length(ArmscyeGirth).mm();
  const double most =
      std::fmax(kMostArmholeEase, kMostArmholeShare * input.body.length(ArmscyeGirth).mm());
  if (more >= std::fmin(kLeastArmholeEase, asked) && more <= std::fmax(most, asked)) {
    return {};
  }
  return {
      {.severity = Severity::Error,
       .code = "check.armhole",
       .where = "armscye_girth",
       .message = "the armhole would be " + Length::mm(more) +
                  " longer than the armscye; a block's armhole is " +
                  Length::mm(kLeastArmholeEase) + " to " + Length::mm(most) + " longer",
       .hint =
           "armscye_girth, side_length, side_neck_to_waist and the shoulder slope contradict each "
           "other: take them, again where they were taken",
       .limit = {.least = Length::mm(kLeastArmholeEase), .most = Length::mm(most)}}};
}

}  // namespace blockwright
