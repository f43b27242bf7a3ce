#pragma once

#include "blockwright/dart/folded.hpp"
#include "blockwright/dart/opened.hpp"
#include "top_line.hpp"

#include <string>
#include <vector>

namespace blockwright {

inline constexpr const char* kTopEdgeCode = "garment.top_edge";

/// A piece whose armhole, shoulder and neckline are to be cut away, in the frame in which it is
/// drafted.
struct Top {
  Opened open;
  std::size_t armhole = 0;  ///< shoulder and neckline follow it

  [[nodiscard]] const std::string& piece() const { return open.piece.name; }
  [[nodiscard]] std::size_t shoulder() const { return armhole + 1; }
  [[nodiscard]] std::size_t neckline() const { return armhole + 2; }
  [[nodiscard]] std::size_t side() const { return armhole - 1; }
  [[nodiscard]] std::size_t centre() const { return (armhole + 3) % open.edges.size(); }
  [[nodiscard]] bool is_cut(std::size_t edge) const {
    return edge >= armhole && edge <= neckline();
  }
  [[nodiscard]] const Path& upper_side() const { return open.edges[side()].stretches.back(); }
  [[nodiscard]] const Path& upper_centre() const { return open.edges[centre()].stretches.front(); }
};

/// Refuses a piece whose shoulder is cut away already, and gathers where the edge is to be drawn.
Top top_of(const Piece& piece);

/// How far along side and centre the new edge begins and ends, in mm from their upper ends.
struct TopCut {
  double under_underarm = 0.0;  ///< less than 0: the side is led on
  double down_centre = 0.0;
};

/// Where the new edge meets side or centre, and which way these run there.
struct TopEnd {
  Point at;
  Vec along;
};
TopEnd side_end(const Top& top, const TopCut& cut);
TopEnd centre_end(const Top& top, const TopCut& cut);

/// The piece with `edges` in the place of those that are cut away; what was on them goes.
Opened cut_away(const Top& top, const TopCut& cut, const std::vector<OpenEdge>& edges);

/// The darts that open on the edges that are cut away.
struct CutDarts {
  std::vector<Dart> crossed;      ///< by the new edge, in the order of the outline
  std::vector<std::string> gone;  ///< names of those that lie wholly on what is cut away
};

/// The upper part of a piece with the darts that the new edge crosses closed as they are stitched;
/// what is next to the side stays where it is.
class ClosedTop {
 public:
  /// Of a back those darts are crossed whose apex is kept, of a front all.
  ClosedTop(const Top& top, const TopCut& cut);

  [[nodiscard]] const CutDarts& darts() const { return darts_; }
  /// From the piece to where it lies when closed, next to the centre.
  [[nodiscard]] const Placement& at_centre() const {
    return folded_.of_stretch(darts_.crossed.size());
  }
  [[nodiscard]] Point middle_of_shoulder() const { return middle_; }
  /// The closed shoulder, from the shoulder point to the neck, next to the centre.
  [[nodiscard]] const Path& shoulder() const { return shoulder_; }

  /// How far along the line each crossed dart closes. Refuses one that would be cut off at its
  /// point.
  [[nodiscard]] std::vector<double> crossings(const Path& line) const;
  /// The new edges on the piece.
  [[nodiscard]] std::vector<OpenEdge> edges_of(const TopLine& line) const;

 private:
  void close_shoulder(const Top& top);

  std::string piece_;
  CutDarts darts_;
  Folded folded_;
  Point middle_;
  Path shoulder_;
};

}  // namespace blockwright
