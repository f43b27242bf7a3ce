#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/layout/versions.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A stitch line of a piece, or a dart's two legs, where the piece is laid.
struct PieceLine {
  std::string name;
  Path path;
  bool dart = false;
};

/// Edges, then darts, then what else is stitched, such as the bowed legs of a waist dart.
std::vector<PieceLine> lines_of(const Piece& piece, const Placement& lies = {});

/// Lines that many places are held against; straight between points that leave them by 0.01 mm.
class LinesAsked {
 public:
  explicit LinesAsked(const std::vector<PieceLine>& lines);

  /// How far a place lies from the nearest of them, in mm, and where that is.
  struct Nearest {
    double distance = 0.0;
    Point point;
  };
  [[nodiscard]] Nearest nearest(Point to) const;
  /// Whether one of them is this path, stroke by stroke.
  [[nodiscard]] bool has(const Path& path) const;

 private:
  void add(const Segment& chord);

  std::vector<Path> paths_;
  std::vector<Segment> chords_;
  std::vector<Box> bunches_;  ///< round a few chords each
};

/// From where on a line counts as moved, in mm. A stretch between two moved ones of its line that
/// is shorter than `crossing` lies where old and new cross, and counts as moved; a moved one that
/// is shorter than `stub` and lies nowhere twice as far off does not.
struct MovedFrom {
  double by;
  double crossing;
  double stub;
};
/// In true size: half a pencil's line. Ours.
inline constexpr MovedFrom kMovedAtAll{0.25, 7.0, 0.0};

/// The parts of lines that lie off all of the others, or on one of them.
enum class Lies { Off, On };
std::vector<PieceLine> parts(const std::vector<PieceLine>& lines, const LinesAsked& others,
                             Lies lies, MovedFrom from = kMovedAtAll);

/// A piece over an earlier version of it, each line where it is laid.
struct PieceChange {
  std::vector<PieceLine> before = {};    ///< of the earlier one, where nothing of the piece lies
  std::vector<PieceLine> kept = {};      ///< of the piece, where the earlier one lay
  std::vector<PieceLine> moved = {};     ///< and elsewhere
  std::vector<MovedPoint> points = {};   ///< named ones by more than kToldMove, the farthest first
  std::vector<MovedPoint> largest = {};  ///< the one place that moved most; none: nothing moved
  std::vector<std::string> still = {};   ///< words of up to two named places that did not move
};
PieceChange change_between(const Piece& piece, const Piece& earlier, const Placement& lies,
                           MovedFrom from = kMovedAtAll);
/// How far the place of it that moved most has moved, in mm.
double largest_move(const Piece& piece, const Piece& earlier, const Placement& lies);

}  // namespace blockwright
