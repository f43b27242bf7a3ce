#pragma once

#include "blockwright/geometry/path.hpp"
#include "blockwright/pattern/finish.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

struct PieceKind;  // what a front or a back is: block/kinds.hpp

/// The first of the items for which `is` holds; null if there is none.
template <class Items, class Is>
auto* first_where(Items& items, Is&& is) {
  const auto it = std::find_if(std::begin(items), std::end(items), is);
  return it == std::end(items) ? nullptr : &*it;
}
/// The item of that name; null if there is none.
template <class Items>
auto* find_named(Items& items, std::string_view name) {
  return first_where(items, [&](const auto& item) { return item.name == name; });
}

/// What an edge of a piece is for.
enum class EdgeRole {
  Seam,      ///< joined to another edge
  Fold,      ///< lies on the fold of the cloth; never gets an allowance
  Hem,       ///< a finished lower edge: the waist of a block
  FreeEdge,  ///< a neckline or an armhole before it is finished
  Opening,   ///< an edge that opens to let the wearer in
};

/// "seam", "fold", "hem", "free_edge" or "opening".
std::string_view edge_role_name(EdgeRole role);

/// One named side of a piece, in the order of travel round it (anticlockwise). Where a dart opens
/// on the edge, the path runs across the mouth by the dart's peak: leg end, peak, leg end.
struct Edge {
  std::string name;
  EdgeRole role = EdgeRole::Seam;
  Path path;
  /// The edge of the block whose place it takes: "waist" for a hem that a style has drawn; empty
  /// for one of the block.
  std::string part = {};
  EdgeFinish finish = {};  ///< what a style says of it

  /// What it is of the block.
  [[nodiscard]] const std::string& part_name() const { return part.empty() ? name : part; }
};

/// A named point of the trade: bust point, shoulder point, nape ...
struct Landmark {
  std::string name;
  Point at;
};

/// One of the two legs of a dart, in the order in which its edge meets them.
enum class Leg { First, Second };

/// A dart. The apex is the point that the cloth turns about (bust point or blade point); `point` is
/// where the stitching ends, held back from the apex. The legs end on the named edge, in the order
/// in which the edge meets them.
///
/// Invariants: both legs are equally long from the apex (1e-9 mm); the leg ends lie on the edge
/// (1e-6 mm); `peak` lies on the edge between them; mouths on one edge do not overlap.
struct Dart {
  std::string name;
  std::string edge;
  Point apex;
  Point point;
  std::array<Point, 2> legs;
  /// Where the folded dart's edge turns: the highest point of the mouth, on the stitch line.
  Point peak;
  /// The leg that the folded dart is pressed towards.
  Leg pressed_to = Leg::First;

  [[nodiscard]] Point inner_leg() const { return legs[pressed_to == Leg::First ? 0 : 1]; }
  [[nodiscard]] Point outer_leg() const { return legs[pressed_to == Leg::First ? 1 : 0]; }
  /// Angle between the legs at the apex.
  [[nodiscard]] Angle angle() const;
  /// Width of the mouth, leg end to leg end, in mm.
  [[nodiscard]] double intake() const { return distance(legs[0], legs[1]); }
  /// Length of each leg from the apex, in mm.
  [[nodiscard]] double leg() const { return distance(apex, legs[0]); }
  /// Where a point beyond the first leg comes to lie when the dart is stitched to its point: it
  /// closes by a little more than its angle at the apex.
  [[nodiscard]] Point closed_as_stitched(Point p) const;

  bool operator==(const Dart&) const = default;
};

/// Length of an edge that is taken up without a dart.
struct Fullness {
  enum class Kind {
    Gathers,  ///< drawn up on a thread: shows as small folds
    Ease,     ///< shrunk or held in: does not show
  };
  std::string name;
  std::string edge;
  Kind kind = Kind::Gathers;
  double from = 0.0;  ///< mm from the start of the edge's path
  double to = 0.0;
  double sewn = 0.0;  ///< mm that the stretch measures when it is drawn up

  [[nodiscard]] double taken_up() const { return to - from - sewn; }
  /// Cut length over sewn length; 1 takes nothing up.
  [[nodiscard]] double ratio() const { return (to - from) / sewn; }
};

/// A mark across an edge that must meet its mate when the seam is sewn.
struct Notch {
  std::string name;        ///< e.g. "armhole.front"
  std::string edge;        ///< the edge it is on
  double along = 0.0;      ///< mm from the start of the edge's path
  int count = 1;           ///< single or double notch
  std::string mate_piece;  ///< piece and edge of the mate; empty if the mate is on no drafted piece
  std::string mate_edge;
};

/// A line drawn on the piece to read the toile by: bust line, waist line, across-back line ...
struct BalanceLine {
  std::string name;
  Path path;
};

/// What is marked on a front that laps over its other half: both centre lines lie on each other
/// when it is closed. The piece ends at the fold of its facing, beyond the centre line.
struct ButtonStand {
  Segment centre;                   ///< from the upper to the lower edge
  double width = 0.0;               ///< from the centre line to the edge, in mm
  std::vector<Point> buttons = {};  ///< middles, on the centre line; none on a half with holes only
  std::vector<Segment> buttonholes = {};  ///< from their end beyond the centre line
};

/// How the piece is laid on the cloth.
enum class CutOn {
  Fold,  ///< cut 1 on the fold
  Pair,  ///< cut 2, mirrored
  One,   ///< cut 1, open, as drawn: one side of a body whose sides differ
};

/// One piece of a pattern, in its own frame: millimetres, origin at the centre waist, x from the
/// centre to the side, y up.
///
/// Invariants (find_problem() returns the first that is broken): the edges join into one closed
/// outline that runs anticlockwise and never crosses itself; edges, darts, notches, balance lines
/// and landmarks each have names of their own; darts and notches lie on their edges.
struct Piece {
  std::string name;  ///< "front", "back", or of a panel "side_front"
  std::vector<Edge> edges;
  std::vector<Dart> darts;
  std::vector<Notch> notches;
  std::vector<BalanceLine> balance_lines;
  std::vector<Landmark> landmarks;
  Segment grainline;
  CutOn cut_on = CutOn::Fold;
  std::vector<Fullness> fullness = {};
  /// What kind of piece it is, or was cut from; null if of none. Lives as long as the program.
  const PieceKind* kind = nullptr;
  std::vector<Material> cut_from = {Material::Cloth};  ///< once from each
  std::optional<ButtonStand> stand = {};               ///< of a garment that is buttoned

  /// Throws std::logic_error if there is no such edge, dart or landmark.
  [[nodiscard]] const Edge& edge(std::string_view edge_name) const;
  [[nodiscard]] const Dart& dart(std::string_view dart_name) const;
  [[nodiscard]] Point landmark(std::string_view landmark_name) const;
};

/// The dart on another place of the paper.
Dart placed(Dart dart, const Placement& placement);

/// Where a dart opens on its edge: both leg ends, brought onto the edge.
struct Mouth {
  const Dart* dart = nullptr;
  NearestOnPath in, out;
};
/// In the order of the edge; they refer to the piece.
std::vector<Mouth> mouths_along(const Piece& piece, const Edge& edge);

/// The edge's stretches before, between and after its dart mouths, in order: what is sewn when the
/// darts are closed. Always one more than the edge has darts; a stretch is empty where a mouth lies
/// at the edge's end or two mouths touch.
std::vector<Path> sewn_stretches(const std::vector<Mouth>& mouths, const Path& path);
std::vector<Path> sewn_stretches(const Piece& piece, const Edge& edge);

/// Length of the edge with its darts closed and its gathers and ease drawn up, in mm.
double sewn_length(const Piece& piece, const Edge& edge);

/// How far along the edge a place of its path lies when the darts are closed and gathers and ease
/// are drawn up evenly, and the way back, in mm from the edge's start. A place within a mouth
/// counts as its first leg; of the two legs that a closed dart brings together, the way back gives
/// the second.
double closed_from_cut(const Piece& piece, const Edge& edge, double along);
double cut_from_closed(const Piece& piece, const Edge& edge, double along);

/// The whole outline, all edges in order, as one closed path (dart mouths bridged by their peaks).
Path flat_outline(const Piece& piece);

/// The outline with each dart cut out to its apex: leg end, apex, leg end.
Path sewing_outline(const Piece& piece);

/// Where a folded dart's edge turns. The dart is folded towards the seam's `inner` side; the seam
/// arrives at the inner leg end in direction `seam` (pointing into the mouth). The result lies on
/// the dart's centre line, so that the peak follows the seam when the dart is pressed.
/// For a seam square to the closed dart its distance from the apex is leg / cos(angle / 2).
/// Where the seam runs so nearly along the leg that its fold never meets the centre line ahead of
/// it, or only further off than twice the mouth's width, the middle of the mouth.
/// Requires: both legs are equally long and not null.
/// Source: plane geometry; check values in tests/reference.
Point dart_peak(Point apex, Point inner_leg, Point outer_leg, Vec seam);

}  // namespace blockwright
