#pragma once

#include "blockwright/block/kinds.hpp"
#include "blockwright/dart/opened.hpp"

#include <functional>
#include <string>

namespace blockwright {

/// What the steps have in common that draw an edge of a garment: a hem, a neckline.

/// A front or a back, whole or a panel of one.
bool is_bodice(const Piece& piece);
/// The piece in the frame in which it is drafted: an image of it is mirrored.
Piece as_drafted(const Piece& piece);

/// Refuses (`code`) a bodice that is cut into panels: `edge` is drawn across the whole piece.
void require_whole_bodice(const Pattern& pattern, const char* code, const std::string& edge);

/// Takes notches out: `is_cut_off` of a place on an edge.
void drop_notches(Opened& open, const std::function<bool(const Anchor&)>& is_cut_off);
/// A notch whose mate was cut off goes too.
void drop_lone_notches(Pattern& pattern);
/// Balance lines as far as they lie on the piece; what is wholly off goes.
void trim_lines(const Path& outline, std::vector<BalanceLine>& lines);

}  // namespace blockwright
