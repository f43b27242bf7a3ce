#include "blockwright/base/number_text.hpp"
#include "blockwright/block/corners.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "blockwright/dart/truing.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "halves.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace blockwright {
namespace {

constexpr double kTouch = 1e-6;        // mm
constexpr double kWidestAngle = 45.0;  // degrees; common practice, no source
constexpr double kGrown = 0.5;         // mm: less is rounding of peaks and arcs
constexpr double kTurned = 0.01;       // degrees: less is rounding
constexpr double kSeamsMeet = 0.05;    // mm

// A half piece before something was done to it, and after it.
struct RedrawnPiece {
  const Opened& before;
  const Opened& after;
};

std::array<RedrawnPiece, 2> pieces_of(const Redrawn& half) {
  return {{{half.before.front, half.after.front}, {half.before.back, half.after.back}}};
}

void require_shoulder(const RedrawnPiece& piece) {
  const double was = closed_length(piece.before, BlockEdge::Shoulder);
  const double is = closed_length(piece.after, BlockEdge::Shoulder);
  if (is >= kLeastShoulder || is >= was - kTouch) return;
  refuse_fit("fit.strap",
             "the shoulder would be " + Length::mm(is) + " long; at least " +
                 Length::mm(kLeastShoulder) + " are left on a block",
             "give a smaller amount, or draw a strap on the finished block");
}

void require_moderate_shoulder(const RedrawnPiece& piece) {
  const double was = closed_length(piece.before, BlockEdge::Shoulder);
  const double is = closed_length(piece.after, BlockEdge::Shoulder);
  if (is <= was + kMostShoulderGain + kSeamsMeet) return;
  refuse_fit("fit.limit",
             "the shoulder would become " + Length::mm(is - was) + " longer; at most " +
                 Length::mm(kMostShoulderGain) + " is the same shoulder",
             "give a smaller amount, or take the shoulder length again and draft anew",
             {MeasurementName::ShoulderLength});
}

// Of the whole neckline.
double share_of_back_neck(const HalfBlock& half) {
  const double back = closed_length(half.back, BlockEdge::Neckline);
  return back / (2.0 * (back + closed_length(half.front, BlockEdge::Neckline)));
}

void require_back_neck(const Redrawn& half) {
  const double is = share_of_back_neck(half.after);
  if (is >= kLeastBackNeck || is >= share_of_back_neck(half.before)) return;
  refuse_fit("fit.limit",
             "half the back neck would be " + fixed(is, 2) + " of the whole neck; at least " +
                 fixed(kLeastBackNeck, 2) + " goes round a nape",
             "give a smaller amount, or take the neck base girth again and draft anew",
             {MeasurementName::NeckBaseGirth});
}

// How near the outline comes to the bust point; the centre front is not looked at.
struct NearEdge {
  double off;
  std::string name;
};

NearEdge nearest_edge(const Opened& front) {
  NearEdge near{1e9, ""};
  for (std::size_t e = 0; e + 1 < front.edges.size(); ++e) {
    for (const Path& stretch : front.edges[e].stretches) {
      const double off = nearest(stretch, apex_of(front)).distance;
      if (off < near.off) near = {off, front.edges[e].name};
    }
  }
  return near;
}

void require_clear_of_bust(const Redrawn& half) {
  const NearEdge is = nearest_edge(half.after.front);
  if (is.off >= kLeastToBustPoint || is.off >= nearest_edge(half.before.front).off - kTouch) return;
  refuse_fit("fit.close",
             "the " + is.name + " would come within " + Length::mm(is.off) +
                 " of the bust point; it must stay " + Length::mm(kLeastToBustPoint) + " off",
             "give a smaller amount, or draw the line on the finished block");
}

bool darts_cross(const Dart& a, const Dart& b) {
  if (distance(a.apex, b.apex) <= kTouch) return false;
  const Path in_a = Path::through({a.legs[0], a.apex, a.legs[1]});
  const Path in_b = Path::through({b.legs[0], b.apex, b.legs[1]});
  return !intersections(in_a, in_b).empty();
}

void require_darts(const Opened& before, const Piece& piece) {
  if (const auto cut = find_cut_dart(piece)) {
    refuse_fit(
        "fit.crossing",
        "the " + piece.name + " " + cut->edge + " would cut through the " + cut->dart + " dart",
        "give a smaller amount, or lead the dart to another edge");
  }
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!darts_cross(piece.darts[i], piece.darts[j])) continue;
      refuse_fit(
          "fit.crossing",
          "the darts " + piece.darts[i].name + " and " + piece.darts[j].name + " would cross",
          "give a smaller amount");
    }
    const auto was = find_dart(before, piece.darts[i].name);
    const double angle = piece.darts[i].angle().degrees();
    if (angle <= kWidestAngle || (was && angle <= before.at(*was).angle().degrees())) continue;
    refuse_fit("fit.limit",
               "the " + piece.name + " " + piece.darts[i].name + " dart would take " +
                   fixed(angle, 1) + " degrees; at most " + fixed(kWidestAngle, 0) + " can be cut",
               "split the dart first, or draft anew");
  }
}

// Where a stretch beside a dart runs back, the dart has been moved over the end of its edge.
void require_stretches(const RedrawnPiece& piece) {
  const auto& [before, after] = piece;
  for (std::size_t e = 0; e < after.edges.size(); ++e) {
    const std::vector<Path>&was = before.edges[e].stretches, &is = after.edges[e].stretches;
    for (std::size_t i = 0; was.size() == is.size() && i < is.size(); ++i) {
      if (was[i].empty() || is[i].empty()) continue;
      if (dot(is[i].end() - is[i].start(), was[i].end() - was[i].start()) > 0.0) continue;
      refuse_fit("fit.place",
                 "nothing of the " + after.piece.name + " " + after.edges[e].name +
                     " would be left beside its dart",
                 "give a smaller amount, or move the dart first");
    }
  }
}

// No correction leaves a neckline or an armhole that turns too sharply to be finished.
void require_round(const RedrawnPiece& piece, BlockEdge edge) {
  const auto radius = [&](const Opened& of) {
    double least = std::numeric_limits<double>::infinity();
    for (const Path& stretch : of.edges[index_of(edge)].stretches) {
      least = std::fmin(least, least_radius(stretch));
    }
    return least;
  };
  const double is = radius(piece.after);
  if (is >= kLeastRadius || is >= radius(piece.before) - kTouch) return;
  refuse_fit("fit.curve",
             "the " + piece.after.piece.name + " " + piece.after.edges[index_of(edge)].name +
                 " would turn within a radius of " + Length::mm(is) + "; at least " +
                 Length::mm(kLeastRadius) + " can be bound or faced",
             "give a smaller amount, here or in the corrections that came before");
}

void require_outline(const Piece& piece) {
  if (const auto problem = find_problem_on_paper(piece)) {
    refuse_fit("fit.crossing",
               "the " + piece.name + " would not hold together: " + problem->message,
               "give a smaller amount");
  }
}

void require_seam(const Redrawn& half, BlockEdge edge, const std::string& name) {
  const auto gap = [&](const HalfBlock& of) {
    return closed_length(of.front, edge) - closed_length(of.back, edge);
  };
  const double off = std::abs(gap(half.after) - gap(half.before));
  if (off <= kSeamsMeet) return;
  refuse_fit("fit.limit",
             "the front and back " + name +
                 " would no longer be sewn together: they would differ by " + Length::mm(off) +
                 "; at most " + Length::mm(kSeamsMeet) + " is allowed",
             "give smaller amounts: here, or in the corrections that came before");
}

// --- what is judged -----------------------------------------------------------------------

std::string times(int count) {
  return count == 1 ? "once" : count == 2 ? "twice" : std::to_string(count) + " times";
}

void judge_curves(const RedrawnPiece& piece, Problems& problems) {
  const auto& [before, after] = piece;
  for (std::size_t e = 0; e < after.edges.size(); ++e) {
    const OpenEdge& edge = after.edges[e];
    const KindEdge* kind = kind_edge(after.piece, edge.name);
    if (kind == nullptr || !kind->most_bends) continue;
    const int got = inflections(edge.stretches);
    if (got <= std::max(*kind->most_bends, inflections(before.edges[e].stretches))) continue;
    problems.push_back({Severity::Warning, "fit.curve", after.piece.name + "." + edge.name,
                        "the curve turns back " + times(got) + "; at most " +
                            times(*kind->most_bends) + " is fair",
                        "look at the line before cutting, and draw it again by hand if need be"});
  }
}

std::vector<BlockCorner> corners_of(const HalfBlock& half) {
  Pattern pattern{{put_together(half.front), put_together(half.back)}, {}};
  pattern.seams = seams_between(pattern.pieces);
  return block_corners(pattern);
}

void judge_corners(const Redrawn& half, Problems& problems) {
  const std::vector<BlockCorner> was = corners_of(half.before), is = corners_of(half.after);
  for (std::size_t i = 0; i < is.size(); ++i) {
    const double off = std::abs(is[i].off());
    if (off <= is[i].within || off <= std::abs(was[i].off()) + kTurned) continue;
    problems.push_back(
        {Severity::Warning, "fit.curve", is[i].where,
         "the angle is " + fixed(is[i].degrees, 1) + " degrees, off " + fixed(is[i].wanted, 0),
         "true the joined edges by hand before cutting"});
  }
}

void judge_darts(const RedrawnPiece& piece, Problems& problems) {
  const auto& [before, after] = piece;
  for (const OpenEdge& edge : after.edges) {
    for (const Dart& dart : edge.darts) {
      const DartPosition* position = find_position(after.piece, edge.name);
      const auto was = find_dart(before, dart.name);
      const double mouth = was ? before.at(*was).intake() : 0.0;
      if (!position || dart.intake() <= position->widest_mouth || dart.intake() <= mouth + kGrown) {
        continue;
      }
      const Length is = Length::mm(dart.intake()), widest = Length::mm(position->widest_mouth);
      problems.push_back({.severity = Severity::Warning,
                          .code = "fit.limit",
                          .where = after.piece.name + "." + dart.name,
                          .message = "the dart grew from " + Length::mm(mouth) + " to " + is +
                                     "; about " + widest + " is usual here",
                          .hint = "split it, or move a part elsewhere",
                          .limit = {.most = widest, .value = is}});
    }
  }
}

}  // namespace

void require_possible(const Redrawn& half, ArmholeEdge armhole) {
  const auto pieces = pieces_of(half);
  std::ranges::for_each(pieces, require_shoulder);
  std::ranges::for_each(pieces, require_moderate_shoulder);
  require_back_neck(half);
  require_clear_of_bust(half);
  std::ranges::for_each(pieces, require_stretches);
  for (const auto& [before, after] : pieces) {
    if (same_shape(before, after)) continue;
    const Piece piece = put_together(after);
    require_darts(before, piece);
    require_outline(piece);
  }
  require_seam(half, BlockEdge::Side, "side seams");
  require_seam(half, BlockEdge::Shoulder, "shoulders");
  for (const RedrawnPiece& piece : pieces) {
    require_round(piece, BlockEdge::Neckline);
    if (armhole == ArmholeEdge::Kept) require_round(piece, BlockEdge::Armhole);
  }
}

Problems judge_centres(const Halves& halves) {
  Problems problems;
  for (const auto& [right, left] : pieces_of({halves.right, halves.left()})) {
    const double off =
        closed_length(right, BlockEdge::Centre) - closed_length(left, BlockEdge::Centre);
    if (std::abs(off) <= kMeetsAtCentre) continue;
    problems.push_back(
        {Severity::Warning, "fit.seam", right.edges.back().name,
         "the centre edges of right and left now differ by " + Length::mm(std::abs(off)),
         "correct both sides alike, or join neckline and waist across the centre by hand"});
  }
  return problems;
}

Problems judge_half(const Redrawn& half) {
  Problems problems;
  for (const RedrawnPiece& piece : pieces_of(half)) {
    judge_curves(piece, problems);
    judge_darts(piece, problems);
  }
  judge_corners(half, problems);
  return problems;
}

}  // namespace blockwright
