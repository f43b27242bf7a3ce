#pragma once

#include "blockwright/pattern/piece.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A piece with the darts of one edge closed along the legs as they will be stitched, from their
/// dart points: how the edge lies when it is sewn. On it a line is drawn across closed darts, as a
/// hem is, and cut apart again. The first stretch of the edge stays, the others are turned to it.
///
/// A line that is smooth on the folded piece is smooth when it is sewn, however wide a dart is.
/// Darts are folded by the legs that they have: a dart whose legs end elsewhere on the lines to its
/// apex is stitched at another angle, and the piece must be folded anew.
class Folded {
 public:
  /// Requires: the piece has such an edge.
  Folded(const Piece& piece, std::string_view edge);

  /// The edge in one line. Gathers are not drawn up.
  [[nodiscard]] Path edge() const;
  /// From the piece to the folded one, for what lies next to that stretch of the edge.
  [[nodiscard]] const Placement& of_stretch(std::size_t i) const { return folding_.at(i); }

  /// A line drawn on the folded piece, from next to the first stretch on, cut at the stitching of
  /// the darts and laid back on the piece: a part for each stretch that it reaches, in order. Both
  /// parts at a dart end as far from its point, so that legs cut there are equal. A line may cross
  /// beyond the edge: legs are led on straight.
  /// Throws InputError "dart.blocked" where it runs past a dart's point, or over its stitching
  /// twice.
  [[nodiscard]] std::vector<Path> laid_back(const Path& drawn) const;

 private:
  std::string piece_;
  std::vector<Path> stretches_;
  std::vector<Dart> darts_;
  std::vector<Placement> folding_, unfolding_;  ///< of each stretch
};

}  // namespace blockwright
