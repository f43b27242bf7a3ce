#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/pattern/piece.hpp"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What is sewn together: one edge to another, or several in a row where a piece was cut into
/// panels. `ease_in` is how much longer the first side is cut than the second, in mm, to be eased
/// in. A seam whose sides are the same edge joins a piece to its mirror image.
struct Seam {
  std::string name;
  std::vector<EdgeOf> a, b;
  double ease_in = 0.0;
  bool b_runs_back = false;  ///< the paths of b run against those of a, as a panel's do
};

/// Pieces and the seams that join them.
struct Pattern {
  std::vector<Piece> pieces;
  std::vector<Seam> seams;
  std::vector<Opening> openings = {};
  std::vector<Binding> bindings = {};
  std::vector<Facing> facings = {};

  /// Throws std::logic_error if there is no such piece.
  [[nodiscard]] const Piece& piece(std::string_view name) const;
};

/// Length of one side of a seam, its darts and gathers closed, in mm.
double sewn_length(const Pattern& pattern, const std::vector<EdgeOf>& side);

/// How far the legs of a dart may differ, in mm.
inline constexpr double kLegTolerance = 1e-9;
/// How far leg ends, peaks and joints may lie off their edge, in mm.
inline constexpr double kOnEdgeTolerance = 1e-6;

/// The first broken invariant of a piece (code "pattern.broken"), or nothing. Outlines are tested
/// for crossings after flattening to 0.05 mm.
std::optional<Problem> find_problem(const Piece& piece);

/// An edge that runs across a dart.
struct CutDart {
  std::string edge;
  std::string dart;
};

/// The first dart that an edge cuts, as it is stitched and more than 0.1 mm from the ends of its
/// legs; such a piece is closed and simple, but cannot be sewn.
std::optional<CutDart> find_cut_dart(const Piece& piece);

/// The endings of pieces that are for one side of the body: "front_right", "front_left".
inline constexpr std::string_view kRightEnding = "_right";
inline constexpr std::string_view kLeftEnding = "_left";

/// A piece's name taken apart: "front_left" is "front" and "_left"; of "front" the side is empty.
struct SidedName {
  std::string_view whole;
  std::string_view side;
};
SidedName sided_name(std::string_view name);

/// Pieces are drafted with x from the centre line to the side. Cut with the cloth's right side up,
/// such a front is the wearer's left one and such a back her right one; the other of the two is its
/// mirror image, at negative x. True for such a mirror image and for panels that it was cut into.
bool is_mirrored(const Piece& piece);

/// The piece of the body's other side: mirrored in the line x = 0, its outline anticlockwise again,
/// darts pressed towards the same place of the body. Mirrored twice it is as it was but for
/// rounding (1e-9 mm).
Piece mirrored(const Piece& piece);

/// The pattern with the pieces of these names mirrored; its seams say anew in which order and
/// direction their edges run. Requires: pieces that share a seam all among the
/// names or none.
Pattern with_mirrored(Pattern pattern, const std::set<std::string>& names);

}  // namespace blockwright
