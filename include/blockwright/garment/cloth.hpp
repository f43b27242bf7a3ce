#pragma once

#include "blockwright/pattern/piece.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// A piece as it is laid on cloth, its grain along the selvedge, in mm.
struct ClothPiece {
  std::string name;
  CutOn cut_on = CutOn::Fold;
  double length = 0.0;  ///< along the grain
  double width = 0.0;   ///< across it; of a piece on the fold, of its half
};

/// Cloth of one width, in mm.
struct Cloth {
  double width = 0.0;     ///< with its selvedges
  double sold_by = 50.0;  ///< what is bought is a multiple of it
  double square = 0.0;    ///< side of a square for bias strips; 0 for none
};

/// Both selvedges together, in mm. Common practice, no source.
inline constexpr double kSelvedges = 20.0;
/// What straightening both ends takes, in mm. Common practice, no source.
inline constexpr double kClothEnds = 50.0;
/// Between two pieces, in mm. Common practice, no source: 3 to 5.
inline constexpr double kBetweenPieces = 4.0;
/// What cloth is taken to shrink by when it is washed before it is cut, as a share of what is
/// bought. Common practice, no source: cotton 3 to 5 %, linen 4 to 8 %, wool 2 to 4 %.
inline constexpr double kShrinking = 0.05;

/// The name that the square for bias strips has among the pieces.
inline constexpr std::string_view kStripSquare = "strips.square";

/// Where a piece lies: its corner nearest to the fold and to the cut end, in mm. Of a piece on the
/// fold in cloth that is laid open, the corner of the whole.
struct ClothPlace {
  std::string piece;
  double across = 0.0, along = 0.0;
  double width = 0.0, length = 0.0;
};

/// How much of a cloth the pieces take, in mm.
struct ClothLength {
  double cut = 0.0;          ///< all rows, with the straightened ends
  double buy = 0.0;          ///< before it shrinks, rounded up to what is sold
  bool open = false;         ///< laid open: cut in one layer
  bool square_free = false;  ///< the square for bias strips takes no more
  std::string too_wide;  ///< a piece, or the square, that the cloth is too narrow for; then there
                         ///< is no length
  std::vector<ClothPlace> places;
};

/// The cloth that the pieces take, laid in rows, the longest first.
///
/// Cloth is folded along its length, a piece on the fold touching a fold: at most two such stand
/// side by side in a row, for which both selvedges are folded to the middle. Where a piece is for
/// one side of the body alone, or too wide for that, it is laid open: pairs twice, pieces on the
/// fold whole. A shorter piece lies beside a longer one, or further along beside the same, where it
/// fits. Nothing is turned against the grain or upside down but the square.
///
/// Guarantees: no two places overlap or are nearer than kBetweenPieces, and all lie between the
/// selvedges. Plenty rather than little: a cutter who lays pieces into each other's hollows needs
/// less. Not counted: nap, checks, a large pattern.
/// Source: common practice, no source.
ClothLength cloth_length(const std::vector<ClothPiece>& pieces, const Cloth& cloth);

}  // namespace blockwright
