#include "blockwright/dart/fullness.hpp"

#include "blending.hpp"
#include "blockwright/dart/truing.hpp"
#include "moving.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace blockwright {
namespace {

constexpr Limits kOver = {10.0, 400.0}, kSpread = {1.0, 300.0}, kApart = {5.0, 100.0};  // mm
// A narrower mouth is nothing to draw up: trueing alone may change a hem by 0.6 mm. Ours.
constexpr double kLeastGathered = 1.0;
constexpr int kMostLines = 12;
// Blending at the hinges of one step makes a seam's edge longer by this at most, in mm.
constexpr double kMostLonger = 0.03;
constexpr std::array<const char*, 2> kEnds = {"_from", "_to"};  // of a fullness: its notches
constexpr double kSameMark = 0.05;  // mm: notches nearer to each other are one on paper

// A fullness goes by two names: its own, and that of its notches, which may have to differ because
// the edge has the notches of the other piece's gathers.
struct FullnessNames {
  std::string fullness, notches;
};

bool has_notch(const Piece& piece, const std::string& name) {
  return find_named(piece.notches, name + kEnds[0]) != nullptr;
}

// What a bridged mouth added to its edge.
struct Bridge {
  double from = 0.0;  // mm of the edge's closed length, mouths apart, where it begins
  double added = 0.0;
};

// Just off a mouth, so that a mark is next to it and not in it, in mm.
constexpr double kOffMouth = 0.01;
constexpr double kTouching = 1e-6;  // mm

// What is drawn up along an edge.
struct Span {
  std::size_t edge = 0;
  double from = 0.0, to = 0.0;  // mm of the closed edge
  std::vector<Bridge> bridges;  // the mouths left open in it
};

// How much of the span is sewn up to a place in it: all but the bridges.
double sewn_until(const Span& span, double along) {
  double sewn = along - span.from;
  for (const Bridge& made : span.bridges) sewn -= std::clamp(along - made.from, 0.0, made.added);
  return sewn;
}

double sewn_length(const Span& span) { return sewn_until(span, span.to); }

// Leaves a mouth open: the edge runs across it in a smooth curve. Marks and bridges behind it move
// on.
void bridge(Opened& open, DartSpot spot, Span& span) {
  OpenEdge& edge = open.edges[spot.edge];
  const Dart dart = open.at(spot);
  Path& before = edge.stretches[spot.dart];
  const Path& after = edge.stretches[spot.dart + 1];
  const Vec leaving = before.empty() ? dart.legs[1] - dart.legs[0] : end_tangent(before);
  const Vec arriving = after.empty() ? dart.legs[1] - dart.legs[0] : start_tangent(after);
  const CubicCurve curve = fair_curve(dart.legs[0], leaving, dart.legs[1], arriving);
  const Bridge made{mouth_along(edge, spot.dart), length(curve)};
  append(before, Path({curve}));
  open.at(spot).legs = {dart.legs[1], dart.legs[1]};
  join(open, spot);
  for (Bridge& earlier : span.bridges) {
    if (earlier.from > made.from) earlier.from += made.added;
  }
  span.bridges.push_back(made);
  const auto [first, last] = std::ranges::minmax(span.bridges, {}, &Bridge::from);
  span = {spot.edge, first.from, last.from + last.added, span.bridges};
}

// The span with half of `over` to either side, as far as the edge goes and neither a mouth nor
// other gathers are in the way.
Span widened(const Opened& open, Span span, double over, const std::string& where) {
  const OpenEdge& edge = open.edges[span.edge];
  double least = 0.0, most = closed_length(edge);
  for (std::size_t d = 0; d < edge.darts.size(); ++d) {
    const double mouth = mouth_along(edge, d);
    if (mouth > span.from && mouth < span.to) {
      refuse("dart.blocked", where, "the dart " + edge.darts[d].name + " opens between the slashes",
             "move the dart first, or set the slashes to one side of it");
    }
    if (mouth <= span.from) least = std::fmax(least, mouth + kOffMouth);
    if (mouth >= span.to) most = std::fmin(most, mouth - kOffMouth);
  }
  for (std::size_t i = 0; i < open.fullness.size(); ++i) {
    const auto& [begin, end] = open.fullness[i];
    if (begin.edge != span.edge) continue;
    const double from = closed_along(edge, begin.stretch, begin.along);
    const double to = closed_along(edge, end.stretch, end.along);
    if (from < span.to - kTouching && to > span.from + kTouching) {
      refuse("dart.blocked", where,
             "the gathers " + open.piece.fullness[i].name + " lie in what would be gathered",
             "set the slashes to one side of them, or make the gathers last");
    }
    if (to <= span.from + kTouching) least = std::fmax(least, to);
    if (from >= span.to - kTouching) most = std::fmin(most, from);
  }
  span.from = std::fmax(least, span.from - 0.5 * over);
  span.to = std::fmin(most, span.to + 0.5 * over);
  return span;
}

// The edge over the span in one fair curve, in place of strokes and bridges. Marks keep their share
// of what is sewn, as cloth is drawn up evenly. Returns where the span ends now.
Span redrawn(Opened& open, const Span& span) {
  const Anchor from = anchor_at(open, span.edge, span.from),
               to = anchor_at(open, span.edge, span.to);
  Path& stretch = open.edges[span.edge].stretches[from.stretch];
  const PathPlace in = place_at_length(stretch, from.along),
                  out = place_at_length(stretch, to.along);
  const Path old = part_between(stretch, in, out);
  const CubicCurve curve = fair_curve(old.start(), start_tangent(old), old.end(), end_tangent(old));
  Path whole = part_before(stretch, in);
  append(whole, Path({curve}));
  append(whole, part_after(stretch, out));
  stretch = whole;
  const double was = to.along - from.along, is = length(curve), sewn = sewn_length(span);
  const auto shift = [&](Anchor& anchor) {
    if (anchor.edge != span.edge || anchor.stretch != from.stretch) return;
    const double off = anchor.along - from.along;
    if (off >= was) anchor.along += is - was;
    if (off <= 0.0 || off >= was || sewn <= 0.0) return;
    anchor.along = from.along + is * sewn_until(span, span.from + off) / sewn;
  };
  change_anchors(open, shift);
  return {span.edge, span.from, span.to + is - was, {}};
}

// Redraws the span, which becomes a fullness of the wished name with a notch at each end.
FullnessNames draw_up(Opened& open, const Span& span, Fullness::Kind kind,
                      const std::string& wish) {
  const auto is_taken = [&](const std::string& name) {
    return find_named(open.piece.fullness, name) != nullptr;
  };
  const auto is_notched = [&](const std::string& name) { return has_notch(open.piece, name); };
  const std::string name = first_free(wish, is_taken);
  FullnessNames names{name, first_free(name, is_notched)};
  const std::string& edge = open.edges[span.edge].name;
  const Span now = redrawn(open, span);
  open.piece.fullness.push_back({name, edge, kind, 0.0, 0.0, sewn_length(span)});
  open.fullness.push_back(
      {anchor_at(open, span.edge, now.from), anchor_at(open, span.edge, now.to)});
  for (const std::size_t end : {0U, 1U}) {
    open.piece.notches.push_back({names.notches + kEnds[end], edge, 0.0, 1, "", ""});
    open.notches.push_back(open.fullness.back()[end]);
  }
  return names;
}

// Where the notches of a fullness come on an edge that is sewn to its own.
struct MateEdge {
  Piece* piece = nullptr;
  std::string edge;
  std::array<double, 2> along{};  // mm from the edge's start, mouths left out
};

// At the same sewn distances; what would be beyond a shorter edge is at its end.
double place_on_mate(const Seam& seam, const Piece& other, const Edge& edge, double along) {
  const double sewn = seam.b_runs_back ? sewn_length(other, edge) - along : along;
  return std::clamp(cut_from_closed(other, edge, sewn), 0.0, length(edge.path));
}

std::vector<MateEdge> mates_of(Pattern& pattern, const Piece& piece, const Fullness& fullness) {
  const EdgeOf own{piece.name, fullness.edge};
  const double from = closed_from_cut(piece, piece.edge(own.edge), fullness.from);
  std::vector<MateEdge> mates;
  for (const Seam& seam : pattern.seams) {
    if (seam.a.size() != 1 || seam.b.size() != 1) continue;
    if (seam.a[0] != own && seam.b[0] != own) continue;
    const EdgeOf mate = seam.a[0] == own ? seam.b[0] : seam.a[0];
    if (mate == own) continue;
    Piece& other = *find_named(pattern.pieces, mate.piece);
    const Edge& edge = other.edge(mate.edge);
    mates.push_back({&other,
                     mate.edge,
                     {place_on_mate(seam, other, edge, from),
                      place_on_mate(seam, other, edge, from + fullness.sewn)}});
  }
  return mates;
}

// A piece on the fold meets the right and the left of the body: what the one has marked on it may
// be what the other would mark.
bool is_marked(const MateEdge& mate, const std::string& name) {
  const auto is_there = [&](std::size_t end) {
    const Notch* notch = find_named(mate.piece->notches, name + kEnds[end]);
    return notch != nullptr && notch->edge == mate.edge &&
           std::abs(notch->along - mate.along[end]) < kSameMark;
  };
  return is_there(0) && is_there(1);
}

// The name under which a fullness is notched on its own piece and on those it is sewn to.
std::string shared_notch_name(const Piece& piece, const std::vector<MateEdge>& mates,
                              const std::string& wish) {
  const auto is_free = [&](const std::string& name) {
    return (name == wish || !has_notch(piece, name)) &&
           std::all_of(mates.begin(), mates.end(), [&](const MateEdge& mate) {
             return is_marked(mate, name) || !has_notch(*mate.piece, name);
           });
  };
  return first_free(wish, [&](const std::string& name) { return !is_free(name); });
}

Problem two_sets_note(const MateEdge& mate, const Piece& piece, const Fullness& fullness) {
  return {Severity::Note, "dart.fullness", mate.piece->name + "." + mate.edge,
          "it has notches for " + piece.name + " too, " + Length::mm(fullness.sewn) + " apart",
          "of the two sets, snip on each side of the body its own"};
}

Problem fullness_note(const Piece& piece, const Fullness& fullness) {
  return {Severity::Note, "dart.fullness", piece.name + "." + fullness.name,
          Length::mm(fullness.to - fullness.from) + " of the edge are " +
              (fullness.kind == Fullness::Kind::Gathers ? "gathered" : "eased") + " to " +
              Length::mm(fullness.sewn) + ", " + fixed(fullness.ratio(), 2) + " to 1",
          "between the two notches"};
}

// The edges that are sewn to the fullness get its notches.
void mark_mates(MovedDarts& moved, std::size_t on, const FullnessNames& names) {
  Piece& piece = moved.pattern.pieces[on];
  const Fullness& fullness = *find_named(piece.fullness, names.fullness);
  const std::vector<MateEdge> mates = mates_of(moved.pattern, piece, fullness);
  const std::string shared = shared_notch_name(piece, mates, names.notches);
  for (const MateEdge& mate : mates) {
    if (is_marked(mate, shared)) continue;
    if (shared != names.notches) moved.remarks.push_back(two_sets_note(mate, piece, fullness));
    for (const std::size_t end : {0U, 1U}) {
      mate.piece->notches.push_back(
          {shared + kEnds[end], mate.edge, mate.along[end], 1, piece.name, fullness.edge});
    }
  }
  for (const char* end : kEnds) {
    Notch& notch = *find_named(piece.notches, names.notches + end);
    notch.name = shared + end;
    if (mates.empty()) continue;
    notch.mate_piece = mates.back().piece->name;
    notch.mate_edge = mates.back().edge;
  }
  moved.remarks.push_back(fullness_note(piece, fullness));
}

void refuse_too_little(const GatherMove& move, const Dart& dart) {
  if (dart.intake() >= kLeastGathered) return;
  refuse("dart.part", move.dart,
         "its mouth of " + Length::mm(dart.intake()) + " is too narrow to draw up; " +
             Length::mm(kLeastGathered) + " is the least",
         "merge it with the next dart, or give it a larger part first");
}

void refuse_too_much_ease(const Piece& piece, const GatherMove& move, const Dart& dart) {
  const double most = is_part(piece, dart.edge, BlockEdge::Armhole) ? kMostArmholeEase : kMostEase;
  if (move.kind != Fullness::Kind::Ease || dart.intake() <= most) return;
  refuse("dart.ease", move.dart,
         "its mouth of " + Length::mm(dart.intake()) + " is more than cloth can hide as ease; " +
             Length::mm(most) + " is the most here",
         "gather it, or keep a dart of " + Length::mm(dart.intake() - most));
}

// --- slash and spread -------------------------------------------------------------------------

void require_sound(const SpreadMove& move) {
  require_within(kSpread, {"by", "a spread", move.by}, move.from);
  require_within(kApart, {"apart", "a distance between slashes", move.apart}, move.from);
  require_within(kOver, {"over", "a length to redraw", move.over}, move.from);
  if (move.lines >= 1 && move.lines <= kMostLines) return;
  refuse("dart.place", move.from, std::to_string(move.lines) + " slashes are out of range",
         "use 1 to " + std::to_string(kMostLines), "lines");
}

// One slash, by the names of the darts of no width at its ends.
struct Slash {
  std::string from, to;
};

Aim place_on(const Opened& open, const PieceWords& words) {
  const PlaceWords place = place_words(words.name);
  Aim aim;
  aim.position = &position_named(open, place.name);
  aim.edge = *find_edge(open, aim.position->edge);
  const double whole = closed_length(open.edges[aim.edge]);
  const double from_end = place.distance.value_or(place.fraction.value_or(0.5) * whole);
  if (!is_off_corners(open.edges[aim.edge], from_end)) {
    refuse("dart.place", words.words,
           "the place " + Length::mm(from_end) + " along an edge of " + Length::mm(whole) +
               " is off it or in its corner",
           "use a fraction between 0 and 1");
  }
  aim.along = from_trade_end(*aim.position, whole, from_end);
  return aim;
}

// A flare is sewn as it is cut: a seam's other edge would be too short for it.
void refuse_flared_seam(const Pattern& pattern, const EdgeOf& own, const std::string& where) {
  for (const Seam& seam : pattern.seams) {
    if (!std::ranges::count(seam.a, own) && !std::ranges::count(seam.b, own)) continue;
    refuse("dart.place", where,
           "the " + own.edge + " would be longer than the edge that it is sewn to",
           "gather it, or spread an edge that is sewn to no other");
  }
}

// Slashes do not cross: the one that opens further along its edge ends less far along the other's.
std::vector<Slash> slashes(Opened& open, const SpreadMove& move, const Aim& from, const Aim& to) {
  std::vector<Slash> made;
  const double middle = 0.5 * (move.lines - 1);
  for (int i = 0; i < move.lines; ++i) {
    const double off = (i - middle) * move.apart;
    const double a = from.along + off, b = to.along - off;
    if (!is_off_corners(open.edges[from.edge], a) || !is_off_corners(open.edges[to.edge], b)) {
      refuse("dart.place", move.from,
             std::to_string(move.lines) + " slashes " + Length::mm(move.apart) +
                 " apart have no room on the edges",
             "set them closer, or use fewer");
    }
    const Anchor from_here = anchor_at(open, from.edge, a), to_there = anchor_at(open, to.edge, b);
    const Point at = point_at(open, from_here), hinge = point_at(open, to_there);
    if (const auto bar = barrier(open, hinge, at)) {
      refuse("dart.blocked", move.from, "a slash from here to " + move.to + " would cut " + *bar,
             "choose ends with a clear way between, or move the dart first");
    }
    const Point apex = move.hinged ? hinge : midpoint(at, hinge);
    const Slash slash{free_name(open, "slash_from"), free_name(open, "slash_to")};
    slit(open, from_here, apex, slash.from);
    slit(open, to_there, apex, slash.to);
    made.push_back(slash);
  }
  return made;
}

void spread(Opened& open, const Slash& slash, double by, bool hinged) {
  const DartSpot from = dart_named(open, slash.from), to = dart_named(open, slash.to);
  const DartSpot first = std::min(from, to), second = std::max(from, to);
  const bool opens_first = from == first;
  if (hinged) {
    const double radius = open.at(from).leg();
    if (by > radius) {
      refuse("dart.place", open.piece.name,
             "a slash of " + Length::mm(radius) + " cannot be spread by " + Length::mm(by),
             "spread it by less, or slash in more lines", "by");
    }
    const Angle turn = Angle::radians(2.0 * std::asin(0.5 * by / radius));
    turn_between(open, first, second, opens_first ? turn : -turn);
  } else {
    const Vec across = unit(left_of(open.at(first).legs[0] - open.at(second).legs[0]));
    shift_between(open, first, second, by * across);
  }
}

// A hinge leaves the edge with a slight turn, which is blended; not on a seam if that would make it
// longer than its other edge by more than `most` mm. Returns by how much it did.
double blend_hinge(Opened& open, DartSpot spot, double most) {
  const OpenEdge& edge = open.edges[spot.edge];
  const Path &before = edge.stretches[spot.dart], &after = edge.stretches[spot.dart + 1];
  if (before.empty() || after.empty()) return 0.0;
  const Angle kink = turn_between(end_tangent(before), start_tangent(after));
  if (std::abs(kink.radians()) >= kMostKink.radians()) return 0.0;
  const Blended fair = blended(edge, spot.dart, kink);
  const double longer =
      std::abs(length(fair.before) + length(fair.after) - length(before) - length(after));
  if (edge.role == EdgeRole::Seam && longer > most) return 0.0;
  lay_in(open, spot, fair);
  return longer;
}

// Bridges what opened; what did not is joined. Returns the span on the edge that opened.
Span close_up(Opened& open, const std::vector<Slash>& made, bool from_end) {
  Span span;
  double most = kMostLonger;
  for (const Slash& slash : made) {
    const DartSpot spot = dart_named(open, from_end ? slash.from : slash.to);
    if (open.at(spot).intake() < 1e-9) {
      most -= blend_hinge(open, spot, most);
      join(open, spot);
    } else {
      bridge(open, spot, span);
    }
  }
  return span;
}

}  // namespace

MovedDarts gather(const Pattern& pattern, const GatherMove& move) {
  require_within(kOver, {"over", "a length to gather over", move.over}, move.dart);
  const PieceWords words = piece_and_name(pattern, move.dart);
  Opened open = opened(pattern.pieces[words.piece]);
  const DartSpot spot = dart_named(open, words.name);
  refuse_too_little(move, open.at(spot));
  refuse_too_much_ease(open.piece, move, open.at(spot));
  Span mouth;
  bridge(open, spot, mouth);
  const Span span = widened(open, mouth, move.over, move.dart);
  const FullnessNames names = draw_up(open, span, move.kind, words.name);
  MovedDarts moved = finished(pattern, words, open);
  mark_mates(moved, words.piece, names);
  return moved;
}

MovedDarts slash_and_spread(const Pattern& pattern, const SpreadMove& move) {
  require_sound(move);
  const PieceWords from = piece_and_name(pattern, move.from);
  const PieceWords to = piece_and_name(pattern, move.to);
  if (from.piece != to.piece) {
    refuse("dart.blocked", move.from, "the slash would leave its piece", "name one piece");
  }
  Opened open = opened(pattern.pieces[from.piece]);
  const Aim a = place_on(open, from), b = place_on(open, to);
  if (a.edge == b.edge) {
    refuse("dart.place", move.from, "both ends of the slash lie on one edge", "name two edges");
  }
  const auto edge_of = [&](const Aim& aim) {
    return EdgeOf{open.piece.name, open.edges[aim.edge].name};
  };
  if (!move.gathered) refuse_flared_seam(pattern, edge_of(a), move.from);
  if (!move.gathered && !move.hinged) refuse_flared_seam(pattern, edge_of(b), move.to);
  const std::vector<Slash> made = slashes(open, move, a, b);
  for (const Slash& slash : made) spread(open, slash, move.by / move.lines, move.hinged);
  std::vector<FullnessNames> drawn_up;
  for (const bool from_end : {true, false}) {
    const Span opening = close_up(open, made, from_end);
    if (opening.bridges.empty()) continue;
    Span span = widened(open, opening, move.over, move.from);
    if (move.gathered) {
      drawn_up.push_back(
          draw_up(open, span, Fullness::Kind::Gathers, open.edges[span.edge].name + "_gathers"));
    } else {
      span.bridges.clear();  // nothing is drawn up
      redrawn(open, span);
    }
  }
  MovedDarts moved = finished(pattern, from, open);
  for (const FullnessNames& names : drawn_up) mark_mates(moved, from.piece, names);
  return moved;
}

}  // namespace blockwright
