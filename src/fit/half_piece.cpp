#include "blockwright/block/balance_lines.hpp"
#include "blockwright/block/drafted_piece.hpp"
#include "halves.hpp"
#include "parts.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Level through the side notch; on the front by way of the bust point.
Path bust_line(const Opened& open) {
  const Point notch = side_notch_point(open);
  const auto level = [&](double y) { return Point{centre_at(open, y), y}; };
  if (!is_a(open.piece, kBodiceFront)) return bust_line(level(notch.y), {}, notch);
  const Point bust = apex_of(open);
  return bust_line(level(bust.y), bust, notch);
}

// Level with the shoulder dart closed: to the dart, and its turned outer part to the across point.
Path across_line(const Opened& open) {
  const Dart& dart = open.at(shoulder_dart(open));
  const Point end = across_of(open), closed = closed_across_of(open);
  const double share = share_of_leg(dart, closed.y);
  const bool over_the_apex = share > 1e-9 && share < 1.0;
  if (!over_the_apex) return Path::through({{centre_at(open, end.y), end.y}, end});
  return across_line_over_dart({centre_at(open, closed.y), closed.y}, dart, dart.angle(), end);
}

void set_lines(Piece& piece, const Opened& open) {
  for (BalanceLine& line : piece.balance_lines) {
    const LineUse use = line_use(piece, line.name);
    if (use == LineUse::Bust) line.path = bust_line(open);
    if (use == LineUse::Across) line.path = across_line(open);
    if (use == LineUse::Waist) line.path = open.edges.front().stretches.back();
  }
}

}  // namespace

bool same_shape(const Piece& a, const Piece& b) {
  return std::equal(a.edges.begin(), a.edges.end(), b.edges.begin(), b.edges.end(),
                    [](const Edge& x, const Edge& y) { return x.path == y.path; }) &&
         a.darts == b.darts && a.balance_lines.size() == b.balance_lines.size() &&
         std::equal(a.notches.begin(), a.notches.end(), b.notches.begin(), b.notches.end(),
                    [](const Notch& x, const Notch& y) { return x.along == y.along; });
}

bool same_shape(const Opened& a, const Opened& b) {
  return a.edges == b.edges && a.notches == b.notches && a.fullness == b.fullness &&
         a.piece.balance_lines.size() == b.piece.balance_lines.size();
}

Piece finished_piece(const Opened& open, const Piece& before) {
  if (same_shape(open, opened(before))) return before;
  Piece piece = put_together(open);
  set_landmarks(piece);
  set_lines(piece, open);
  return piece;
}

}  // namespace blockwright
