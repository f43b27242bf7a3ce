#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What becomes of an edge of a garment when it is sewn.
enum class Finish {
  NotSaid,     ///< no style has said it: the edge is cut as a toile, a card or net
  Fold,        ///< lies on the fold of the cloth
  PanelSeam,   ///< joins two panels of one piece: sewn first, pressed open
  Seam,        ///< joins two pieces or closes an opening; pressed open
  Enclosed,    ///< shut in by a facing, a lining or a sleeve
  Turned,      ///< a hem, turned under
  Bound,       ///< wrapped in a bias strip: the edge is the finished line
  FoldedBack,  ///< the fold of a facing that is cut on to the edge and folded to the inside
  Raw,         ///< cut on the line: what it needs is added on the cloth
};

/// "not_said", "fold", "panel_seam", "seam", "enclosed", "turned", "bound", "folded_back" or "raw".
std::string_view finish_name(Finish finish);

/// How an edge is finished, and the allowance that it is cut with for that, in mm.
struct EdgeFinish {
  Finish how = Finish::NotSaid;
  double allowance = 0.0;
  bool operator==(const EdgeFinish&) const = default;
};

/// An edge of a pattern, by its piece.
struct EdgeOf {
  std::string piece, edge;
  bool operator==(const EdgeOf&) const = default;
};

/// What closes an opening.
enum class Closure {
  Zip,      ///< closed at its lower end
  OpenZip,  ///< parts in two
  Buttons,  ///< one half laps over the other
};

/// "zip", "open_zip" or "buttons".
std::string_view closure_name(Closure closure);

/// Where a garment opens to let the wearer in; lengths in mm along the sewn edge.
struct Opening {
  std::string name;           ///< "centre_back", "centre_front" or "left_side"
  std::vector<EdgeOf> edges;  ///< one edge of each half that it parts; one where both are one piece
  Closure with = Closure::Zip;
  /// From the upper end of the edge to where the zip begins or the first button sits.
  double from_edge = 0.0;
  double length = 0.0;
  double zip = 0.0;      ///< length to buy; none with buttons
  double button = 0.0;   ///< diameter; with buttons, and the two that follow
  double spacing = 0.0;  ///< from button to button
  int buttons = 0;
};

/// Edges that are bound with one strip of bias, in mm.
struct Binding {
  std::vector<EdgeOf> edges;  ///< of the drafted half or side
  int strips = 1;             ///< of this length: two where each armhole has its own
  double shows = 0.0;         ///< visible width
  double cut_width = 0.0;
  double edge_length = 0.0;   ///< of all edges that one strip binds, darts closed
  double strip_length = 0.0;  ///< of one strip, with its ends
  std::string joined;         ///< where its ends meet: "the underarm"; empty: they turn in
  double square = 0.0;        ///< side of the square of cloth that yields all its strips
};

/// What a piece is cut from.
enum class Material {
  Cloth,
  Interfacing,  ///< cut on the stitch line, without allowance
};

/// "cloth" or "interfacing".
std::string_view material_name(Material material);

/// A piece that is sewn to edges of the garment and turned inside, in mm.
struct Facing {
  std::string piece;
  std::string edge;           ///< of the piece: what is sewn to the garment
  std::vector<EdgeOf> faced;  ///< in the order of travel
  EdgeOf before, after;       ///< what the piece lies under at both ends, by edges of those names
  double width = 0.0;
  double roll = 0.0;
};

}  // namespace blockwright
