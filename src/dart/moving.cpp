#include "moving.hpp"

#include "blockwright/dart/centre_seam.hpp"
#include "blockwright/dart/truing.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

// An angle of no more than this is nothing: at the largest leg its mouth is below 1e-8 mm.
constexpr Angle kNothing = Angle::radians(1e-11);
// A dart of less is too little to reckon with: 0.05 mm on a leg of 30 cm. Ours.
constexpr Angle kLeastDart = Angle::degrees(0.01);
// Narrower than this at the mouth, in mm, a dart is better eased in. Common practice, no source.
constexpr double kNarrowest = 6.0;
// On a leg shorter than this a wide angle makes a blunt cone. Common practice, no source.
constexpr double kShortLeg = 150.0;
// Two lengths nearer than this may read alike on a tape in inches, mm.
constexpr double kMayReadAlike = 25.4 / 8.0;
constexpr Angle kWideOnShortLeg = Angle::degrees(20.0);
// Nearer than this on their edge, darts of two apexes are in each other's way; apexes as near as
// this are those of one group. In mm; ours.
constexpr double kNeighbours = 40.0;
constexpr double kOneGroup = 60.0;
constexpr double kOnCentre = 1e-6;  // mm
constexpr double kTouch = 1e-6;     // mm

std::string of(const Opened& open, const std::string& dart) { return open.piece.name + "." + dart; }

bool is_straight_fold(const Path& edge) {
  return std::ranges::all_of(edge.curves(), [](const Curve& curve) {
    return std::holds_alternative<Segment>(curve) && std::abs(start_of(curve).x) <= kOnCentre &&
           std::abs(end_of(curve).x) <= kOnCentre;
  });
}

// A fold can only lie on a straight line. The grain stays parallel to the centre waist's part,
// which never turns.
void settle_fold(Piece& piece, Problems& remarks) {
  Edge* fold = first_where(piece.edges, [&](const Edge& edge) {
    const KindEdge* drafted = kind_edge(piece, edge.name);
    return drafted != nullptr && drafted->role == EdgeRole::Fold;
  });
  if (fold == nullptr || piece.cut_on == CutOn::One) return;
  const bool straight = is_straight_fold(fold->path) && !is_seam_by_choice(piece, *fold);
  if (straight == (piece.cut_on == CutOn::Fold)) return;
  piece.cut_on = straight ? CutOn::Fold : CutOn::Pair;
  fold->role = straight ? EdgeRole::Fold : EdgeRole::Seam;
  remarks.push_back({Severity::Note, "dart.fold", piece.name + "." + fold->name,
                     straight ? "it is straight again: cut 1 on the fold"
                              : "it is no longer straight and becomes a seam: cut 2, a pair",
                     straight ? "" : "the grain keeps to its lower part"});
}

bool darts_cross(const Dart& a, const Dart& b) {
  return distance(a.apex, b.apex) > kTouch && meets(Path::through({a.legs[0], a.apex, a.legs[1]}),
                                                    Path::through({b.legs[0], b.apex, b.legs[1]}));
}

// Gathers are drawn up as one; a dart in the midst of them could not be sewn.
void refuse_darts_in_gathers(const Piece& piece, const std::string& where) {
  for (const Fullness& fullness : piece.fullness) {
    for (const Dart& dart : piece.darts) {
      if (dart.edge != fullness.edge) continue;
      const double at = nearest(piece.edge(dart.edge).path, dart.peak).along;
      if (at <= fullness.from || at >= fullness.to) continue;
      refuse("dart.blocked", where,
             "the dart " + dart.name + " would open in the gathers " + fullness.name,
             "choose a place to one side of them, or make the gathers last");
    }
  }
}

void refuse_crossings(const Piece& piece, const std::string& where) {
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!darts_cross(piece.darts[i], piece.darts[j])) continue;
      refuse("dart.blocked", where,
             "the darts " + piece.darts[i].name + " and " + piece.darts[j].name + " would cross",
             "move a part of the dart, or choose another place");
    }
  }
  if (const auto cut = find_cut_dart(piece)) {
    refuse("dart.blocked", where, "the " + cut->edge + " would cut through the dart " + cut->dart,
           "move a part of the dart, set its parts closer, or choose another place");
  }
  if (const auto problem = find_problem_on_paper(piece)) {
    refuse("dart.blocked", where, "the piece would not hold together: " + problem->message,
           "move a part of the dart, or choose another place");
  }
}

// Darts of two apexes side by side look like one that is sewn wrongly.
void warn_of_neighbours(const Opened& open, DartSpot spot, Problems& remarks) {
  const OpenEdge& edge = open.edges[spot.edge];
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const double off = std::abs(mouth_along(edge, d) - mouth_along(edge, spot.dart));
    const bool one_group = distance(edge.darts[d].apex, open.at(spot).apex) < kOneGroup;
    if (d == spot.dart || off > kNeighbours || one_group) continue;
    remarks.push_back({Severity::Warning, "dart.beside", of(open, open.at(spot).name),
                       "it opens only " + Length::mm(off) + " from the dart " +
                           of(open, edge.darts[d].name) + ", which has another apex",
                       "set it further off, or choose another edge"});
  }
}

// Why a dart of this width is hard to sew, empty if it is not; and the mouth that was passed.
struct WhyWide {
  Wording words = {};
  Limit limit = {};
};

// Beyond this not even a dart pressed open over a ham lies close: what it takes needs two lines.
// Common practice, no source.
constexpr Angle kMostInOneDart = Angle::degrees(45.0);

WhyWide why_wide(const Dart& dart, const DartPosition& position) {
  if (dart.angle() > kMostInOneDart) {
    return {"over " + fixed(kMostInOneDart.degrees(), 0) +
            " degrees it stands off the body like a cone, however it is pressed"};
  }
  if (dart.angle() > kWidestDart) {
    return {"over " + fixed(kWidestDart.degrees(), 0) + " degrees no dart lies flat at its point"};
  }
  const Angle most = dart.leg() < kShortLeg ? kWideOnShortLeg : kWideToSew;
  const double slack = dart.angle() > most ? kMayReadAlike : 0.0;
  if (dart.intake() > position.widest_mouth + slack) {
    const Length widest = Length::mm(position.widest_mouth);
    return {"about " + widest + " is usual here",
            {.most = widest, .value = Length::mm(dart.intake())}};
  }
  if (dart.angle() <= most) return {};
  return {dart.leg() < kShortLeg
              ? "over " + fixed(most.degrees(), 0) + " degrees so short a dart makes a blunt point"
              : "over " + fixed(most.degrees(), 0) +
                    " degrees a dart's point is hard to press flat"};
}

const char* cure_of_width(const Dart& dart) {
  return dart.angle() > kWidestDart
             ? "move a part of it to the side seam, gather it, split it in two, or make a princess "
               "seam of it; as one dart try it on a toile first, trim its inside to a seam "
               "allowance and press it open over a ham"
             : "split it in two, move a part elsewhere, or make a seam of it";
}

Problems hard_to_sew(const Opened& open, DartSpot spot) {
  Problems remarks;
  const Dart& dart = open.at(spot);
  const std::string where = of(open, dart.name);
  const WhyWide wide = why_wide(dart, position_of(open, spot));
  if (!wide.words.empty()) {
    remarks.push_back({.severity = Severity::Warning,
                       .code = "dart.wide",
                       .where = where,
                       .message = "it is " + Length::mm(dart.intake()) + " wide on a leg of " +
                                  Length::mm(dart.leg()) + ", " + fixed(dart.angle().degrees(), 1) +
                                  " degrees; " + wide.words,
                       .hint = cure_of_width(dart),
                       .limit = wide.limit});
  }
  if (dart.intake() < kNarrowest) {
    remarks.push_back({Severity::Note, "dart.narrow", where,
                       "it is only " + Length::mm(dart.intake()) + " wide",
                       "leave it unsewn and ease so much into the seam, or turn it into ease"});
  }
  return remarks;
}

}  // namespace

void hand_over(Opened& open, const std::string& from, const std::string& to, Angle by) {
  const DartSpot closing = dart_named(open, from), opening = dart_named(open, to);
  turn_between(open, std::min(closing, opening), std::max(closing, opening),
               closing < opening ? -by : by);
  if (std::abs(open.at(closing).angle().radians()) <= kNothing.radians()) join(open, closing);
}

void require_some_width(const Opened& open, const std::string& name) {
  const double angle = std::abs(open.at(dart_named(open, name)).angle().degrees());
  if (angle >= kLeastDart.degrees()) return;
  refuse("dart.part", of(open, name),
         "it would have " + told_number(angle, 6) + " degrees, too narrow to sew",
         "give it a larger part, or move the whole dart");
}

std::string free_name(const Opened& open, const std::string& wish) {
  return first_free(wish,
                    [&](const std::string& name) { return find_dart(open, name).has_value(); });
}

MovedDarts finished(const Pattern& pattern, const PieceWords& moved, const Opened& open,
                    Problems remarks) {
  MovedDarts result{pattern, std::move(remarks)};
  Piece& piece = result.pattern.pieces[moved.piece];
  piece = put_together(open);
  settle_fold(piece, result.remarks);
  refuse_darts_in_gathers(piece, moved.words);
  refuse_crossings(piece, moved.words);
  piece = with_clear_grain(std::move(piece));
  return result;
}

Problems judged_width(const Opened& open, const std::string& name) {
  const DartSpot spot = dart_named(open, name);
  require_some_width(open, name);
  Problems remarks = hard_to_sew(open, spot);
  warn_of_neighbours(open, spot, remarks);
  return remarks;
}

Problems hard_to_sew(const Pattern& pattern) {
  Problems remarks;
  for (const Piece& piece : pattern.pieces) {
    if (!is_whole(piece)) continue;
    const Opened open = opened(piece);
    for (std::size_t e = 0; e < open.edges.size(); ++e) {
      for (std::size_t d = 0; d < open.edges[e].darts.size(); ++d) {
        std::ranges::move(hard_to_sew(open, {e, d}), std::back_inserter(remarks));
      }
    }
  }
  return remarks;
}

}  // namespace blockwright
