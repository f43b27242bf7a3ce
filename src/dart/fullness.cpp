#include "blockwright/dart/fullness.hpp"

#include "aim.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/geometry/construct.hpp"
#include "blockwright/geometry/path_parts.hpp"
#include "moving.hpp"
#include "reach.hpp"
#include "turning.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kLeastOver = 10.0, kMostOver = 400.0;
constexpr double kLeastSpread = 1.0, kMostSpread = 300.0;
constexpr int kMostLines = 12;
constexpr double kLeastApart = 5.0, kMostApart = 100.0;

void require_range(const std::string& where, const char* what, double value, double least,
                   double most) {
  if (value >= least && value <= most) return;
  refuse("dart.place", where, std::string(what) + " of " + trimmed(value, 3) + " is out of range",
         "use " + trimmed(least, 0) + " to " + trimmed(most, 0));
}

// What a bridged mouth added to its edge.
struct Bridge {
  double from = 0.0;  // mm of the edge's closed length, mouths apart, where it begins
  double added = 0.0;
};

// Leaves a mouth open: the edge runs across it in a smooth curve. Marks behind it move on.
Bridge bridge(Opened& open, DartSpot spot) {
  OpenEdge& edge = open.edges[spot.edge];
  const Dart dart = open.at(spot);
  Path& before = edge.stretches[spot.dart];
  const Path& after = edge.stretches[spot.dart + 1];
  const Vec leaving = before.empty() ? dart.legs[1] - dart.legs[0] : end_tangent(before);
  const Vec arriving = after.empty() ? dart.legs[1] - dart.legs[0] : start_tangent(after);
  const CubicCurve curve = fair_curve(dart.legs[0], leaving, dart.legs[1], arriving);
  const Bridge made{closed_along(edge, spot.dart + 1, 0.0), length(curve)};
  append(before, Path({curve}));
  open.at(spot).legs = {dart.legs[1], dart.legs[1]};
  join(open, spot);
  return made;
}

// Room along the edge to either side of a place, up to the next mouth or the end.
double room_before(const Opened& open, DartSpot spot) {
  return length(open.edges[spot.edge].stretches[spot.dart]);
}
double room_after(const Opened& open, DartSpot spot) {
  return length(open.edges[spot.edge].stretches[spot.dart + 1]);
}

// The place `along` of an edge's closed length, as an anchor.
Anchor anchor_at(const Opened& open, std::size_t edge, double along) {
  const EdgeSpot spot = spot_at(open, edge, along);
  return {spot.edge, spot.stretch, spot.along};
}

struct Span {
  std::size_t edge = 0;
  double from = 0.0, to = 0.0, added = 0.0;  // mm of the closed edge
};

void add_fullness(Opened& open, const std::string& name, Fullness::Kind kind, const Span& span) {
  const std::string& edge = open.edges[span.edge].name;
  const Anchor from = anchor_at(open, span.edge, span.from);
  const Anchor to = anchor_at(open, span.edge, span.to);
  open.piece.fullness.push_back(
      {name, edge, kind, 0.0, 0.0, span.to - span.from - span.added});
  open.fullness.push_back({from, to});
  for (const auto& [suffix, anchor] : {std::pair{"_from", from}, std::pair{"_to", to}}) {
    open.piece.notches.push_back({name + suffix, edge, 0.0, 1, "", ""});
    open.notches.push_back(anchor);
  }
}

// The other edge of the seam gets its notches at the same sewn distances.
void mark_mate(Pattern& pattern, const std::string& piece_name, const std::string& fullness_name) {
  Piece* piece = nullptr;
  for (Piece& p : pattern.pieces) piece = p.name == piece_name ? &p : piece;
  const auto mine = std::find_if(piece->fullness.begin(), piece->fullness.end(),
                                 [&](const Fullness& f) { return f.name == fullness_name; });
  const EdgeOf own{piece_name, mine->edge};
  for (const Seam& seam : pattern.seams) {
    if (seam.a.size() != 1 || seam.b.size() != 1) continue;
    if (seam.a[0] != own && seam.b[0] != own) continue;
    const EdgeOf mate = seam.a[0] == own ? seam.b[0] : seam.a[0];
    if (mate == own) continue;
    for (Piece& other : pattern.pieces) {
      if (other.name != mate.piece) continue;
      const double from = closed_from_cut(*piece, piece->edge(own.edge), mine->from);
      const Edge& edge = other.edge(mate.edge);
      const auto mark = [&](const char* suffix, double along) {
        other.notches.push_back({fullness_name + suffix, mate.edge,
                                 cut_from_closed(other, edge, along), 1, own.piece, own.edge});
        for (Notch& notch : piece->notches) {
          if (notch.name != fullness_name + suffix) continue;
          notch.mate_piece = mate.piece;
          notch.mate_edge = mate.edge;
        }
      };
      mark("_from", from);
      mark("_to", from + mine->sewn);
    }
  }
}

void refuse_too_much_ease(const GatherMove& move, const Dart& dart) {
  const double most = dart.edge == "armhole" ? kMostArmholeEase : kMostEase;
  if (move.kind != Fullness::Kind::Ease || dart.intake() <= most) return;
  refuse("dart.ease", move.dart,
         "its mouth of " + trimmed(dart.intake(), 1) + " mm is more than cloth can hide as ease; " +
             trimmed(most, 0) + " mm is the most here",
         "gather it, or keep a dart of " + trimmed(dart.intake() - most, 1) + " mm");
}

Problem told(const Piece& piece, const std::string& name) {
  const auto f = std::find_if(piece.fullness.begin(), piece.fullness.end(),
                              [&](const Fullness& one) { return one.name == name; });
  return {Severity::Note, "dart.fullness", piece.name + "." + name,
          trimmed(f->to - f->from, 1) + " mm of the edge are " +
              (f->kind == Fullness::Kind::Gathers ? "gathered" : "eased") + " to " +
              trimmed(f->sewn, 1) + " mm (" + fixed(f->ratio(), 2) + " to 1)",
          "between the two notches"};
}

// --- slash and spread -------------------------------------------------------------------------

void require_sound(const SpreadMove& move) {
  require_range(move.from, "a spread in mm", move.by, kLeastSpread, kMostSpread);
  require_range(move.from, "a number of slashes", move.lines, 1.0, kMostLines);
  require_range(move.from, "a distance in mm between slashes", move.apart, kLeastApart, kMostApart);
  if (move.gathered) require_range(move.from, "a length in mm", move.over, kLeastOver, kMostOver);
}

// One slash, by the names of the darts of no width that stand at its ends.
struct Slash {
  std::string from, to;
};

Aim place_on(const Opened& open, const std::string& words, const std::string& full) {
  const PlaceWords place = place_words(words);
  Aim aim;
  aim.position = &position_named(open.piece, place.name);
  aim.edge = *find_edge(open, aim.position->edge);
  const double whole = closed_length(open.edges[aim.edge]);
  const double from_end = place.distance.value_or(place.fraction.value_or(0.5) * whole);
  if (!(from_end >= kFromCorner && from_end <= whole - kFromCorner)) {
    refuse("dart.place", full,
           "the place " + trimmed(from_end, 1) + " mm along an edge of " + trimmed(whole, 1) +
               " mm is off it or in its corner",
           "use a fraction between 0 and 1");
  }
  aim.along = from_trade_end(*aim.position, whole, from_end);
  return aim;
}

// Slashes do not cross: the one that opens further along its edge ends less far along the other's.
std::vector<Slash> slashes(Opened& open, const SpreadMove& move, const Aim& from, const Aim& to) {
  std::vector<Slash> made;
  const double middle = 0.5 * (move.lines - 1);
  for (int i = 0; i < move.lines; ++i) {
    const double off = (i - middle) * move.apart;
    const double whole_from = closed_length(open.edges[from.edge]);
    const double whole_to = closed_length(open.edges[to.edge]);
    const double a = from.along + off, b = to.along - off;
    if (a < kFromCorner || a > whole_from - kFromCorner || b < kFromCorner ||
        b > whole_to - kFromCorner) {
      refuse("dart.place", move.from,
             std::to_string(move.lines) + " slashes " + trimmed(move.apart, 1) +
                 " mm apart have no room on the edges",
             "set them nearer, or use fewer");
    }
    const Point at = spot_at(open, from.edge, a).point, hinge = spot_at(open, to.edge, b).point;
    if (const auto bar = barrier(open, hinge, at)) {
      refuse("dart.blocked", move.from, "a slash from here to " + move.to + " would cut " + *bar,
             "choose ends with a clear way between, or move the dart first");
    }
    const Point apex = move.hinged ? hinge : midpoint(at, hinge);
    const Slash slash{free_name(open, "slash_from"), free_name(open, "slash_to")};
    slit(open, spot_at(open, from.edge, a), apex, slash.from);
    slit(open, spot_at(open, to.edge, b), apex, slash.to);
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
    const Angle turn = Angle::radians(2.0 * std::asin(std::fmin(1.0, 0.5 * by / radius)));
    turn_between(open, first, second, opens_first ? turn : -turn);
  } else {
    const Vec across = unit(left_of(open.at(first).legs[0] - open.at(second).legs[0]));
    shift_between(open, first, second, by * across);
  }
}

// Bridges what opened; what did not is joined. Returns the span on the edge that opened.
Span close_up(Opened& open, const std::vector<Slash>& made, bool from_end, double over) {
  Span span{0, 1e300, -1e300, 0.0};
  for (const Slash& slash : made) {
    const DartSpot spot = dart_named(open, from_end ? slash.from : slash.to);
    span.edge = spot.edge;
    if (open.at(spot).intake() < 1e-9) {
      join(open, spot);
      continue;
    }
    const Bridge made_here = bridge(open, spot);
    span.from = std::fmin(span.from, made_here.from);
    span.to = std::fmax(span.to, made_here.from) + made_here.added;
    span.added += made_here.added;
  }
  span.from = std::fmax(0.0, span.from - 0.5 * over);
  span.to = std::fmin(closed_length(open.edges[span.edge]), span.to + 0.5 * over);
  return span;
}

}  // namespace

MovedDarts gather(const Pattern& pattern, const GatherMove& move) {
  require_range(move.dart, "a length in mm", move.over, kLeastOver, kMostOver);
  const PieceWords words = piece_and_name(pattern, move.dart);
  Opened open = opened(pattern.pieces[words.piece]);
  const DartSpot spot = dart_named(open, words.name);
  refuse_too_much_ease(move, open.at(spot));
  const double before = std::fmin(0.5 * move.over, room_before(open, spot));
  const double after = std::fmin(0.5 * move.over, room_after(open, spot));
  const Bridge made = bridge(open, spot);
  add_fullness(open, words.name, move.kind,
               {spot.edge, made.from - before, made.from + made.added + after, made.added});
  MovedDarts moved{pattern, {}};
  moved.pattern.pieces[words.piece] = finished(open, move.dart, moved.remarks);
  mark_mate(moved.pattern, open.piece.name, words.name);
  moved.remarks.push_back(told(moved.pattern.pieces[words.piece], words.name));
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
  const Aim a = place_on(open, from.name, move.from), b = place_on(open, to.name, move.to);
  if (a.edge == b.edge) {
    refuse("dart.place", move.from, "both ends of the slash lie on one edge", "name two edges");
  }
  const std::vector<Slash> made = slashes(open, move, a, b);
  for (const Slash& slash : made) spread(open, slash, move.by / move.lines, move.hinged);
  MovedDarts moved{pattern, {}};
  std::vector<std::string> named;
  for (const bool from_end : {true, false}) {
    const Span span = close_up(open, made, from_end, move.over);
    if (!move.gathered || span.added == 0.0) continue;
    named.push_back(open.edges[span.edge].name + "_gathers");
    add_fullness(open, named.back(), Fullness::Kind::Gathers, span);
  }
  moved.pattern.pieces[from.piece] = finished(open, move.from, moved.remarks);
  for (const std::string& name : named) {
    mark_mate(moved.pattern, open.piece.name, name);
    moved.remarks.push_back(told(moved.pattern.pieces[from.piece], name));
  }
  return moved;
}

}  // namespace blockwright
