#pragma once

#include "blockwright/base/wording.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/opened.hpp"

#include <functional>
#include <initializer_list>
#include <string>
#include <vector>

namespace blockwright {

/// What the steps have in common that draw an edge of a garment: a hem, a neckline, an armhole, a
/// top edge.

/// A front or a back, whole or a panel of one.
bool is_bodice(const Piece& piece);
/// The piece in the frame in which it is drafted: an image of it is mirrored.
Piece as_drafted(const Piece& piece);

/// Refuses (`code`) a bodice that is cut into panels: `edge` is drawn across the whole piece.
void require_whole_bodice(const Pattern& pattern, const char* code, const std::string& edge);

/// The places of a kind's pieces in the pattern: one, or one of each side.
std::vector<std::size_t> pieces_of(const Pattern& pattern, const PieceKind& kind);
/// The piece of that kind that is sewn to this one: of its own side where there are two.
std::size_t mate_of(const Pattern& pattern, const Piece& piece, const PieceKind& kind);

/// An amount in mm, and what bounds it in words.
struct Bounded {
  const char* key;
  const char* what;  ///< "its depth at the centre"
  double value, most;
  Wording why;
  double least = 0.0;
};
/// Refuses (`code`) an amount off its bounds, with what it can be.
void require_bounded(const char* code, const std::string& piece, const Bounded& b);

/// Refuses an edge of a front within kLeastOffBust of the bust point, warns within kUsualOffBust.
void judge_off_bust(const char* code, const Piece& front, const Edge& edge, Problems& remarks);

/// True if gathers lie on one of these edges.
bool is_gathered(const Opened& open, std::initializer_list<std::size_t> edges);
/// The widest dart that turns about a point, which takes up what an edge becomes shorter; null if
/// there is none. Darts made of one turn a little to the side of it.
const Dart* widest_dart_about(const Opened& open, Point apex);
/// Darts keep their stitching: their legs end on a line that was drawn across them. Requires: a
/// part for each stretch.
void end_darts_on(std::vector<Path> parts, OpenEdge& edge);
/// By how much a front edge was drawn shorter, and the dart that took it up; null if none could.
struct DrawnCloser {
  const char* edge;  ///< "neck edge"
  double by;         ///< mm, each half
  const Dart* into;
};
/// The note that says so.
Problem told_closer(const char* code, const std::string& piece, const DrawnCloser& closer);

/// Takes notches out: `is_cut_off` of a place on an edge.
void drop_notches(Opened& open, const std::function<bool(const Anchor&)>& is_cut_off);
/// A notch whose mate was cut off goes too.
void drop_lone_notches(Pattern& pattern);
/// Balance lines as far as they lie on the piece; what is wholly off goes.
void trim_lines(const Path& outline, std::vector<BalanceLine>& lines);

}  // namespace blockwright
