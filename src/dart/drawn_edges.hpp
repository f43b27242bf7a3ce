#pragma once

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/drawn_neckline.hpp"
#include "blockwright/dart/opened.hpp"

#include <functional>
#include <string>

namespace blockwright {

/// What the steps have in common that draw an edge of a garment: a hem, a neckline, a top edge.

/// A front or a back, whole or a panel of one.
bool is_bodice(const Piece& piece);
/// The piece in the frame in which it is drafted: an image of it is mirrored.
Piece as_drafted(const Piece& piece);

/// Refuses (`code`) a bodice that is cut into panels: `edge` is drawn across the whole piece.
void require_whole_bodice(const Pattern& pattern, const char* code, const std::string& edge);

/// Where the pieces of a kind stand in the pattern.
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

/// The widest dart of the bust, which takes up what an edge loses; null if there is none.
const Dart* taking_up(const Opened& open, Point bust_point);
/// Refuses an edge of a front within kLeastOffBust of the bust point, warns within kUsualOffBust.
void judge_off_bust(const char* code, const Piece& front, const Edge& edge, Problems& remarks);

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
