#pragma once

#include "blockwright/pattern/piece.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// The working form of a piece, for what moves darts and for what moves other points with them.

/// An edge taken apart at its darts: a stretch before, between and after them. A stretch may be
/// empty where two mouths touch.
struct OpenEdge {
  std::string name;
  EdgeRole role = EdgeRole::Seam;
  std::vector<Path> stretches;  ///< one more than darts
  std::vector<Dart> darts;      ///< in the order of the edge
  std::string part = {};        ///< as Edge::part
  EdgeFinish finish = {};       ///< as Edge::finish

  [[nodiscard]] const std::string& part_name() const { return part.empty() ? name : part; }
  bool operator==(const OpenEdge&) const = default;
};

/// A place on an edge. Of a mark: it keeps to its stretch while darts open and close next to it.
struct Anchor {
  std::size_t edge = 0;
  std::size_t stretch = 0;
  double along = 0.0;  ///< mm from the start of the stretch
  bool operator==(const Anchor&) const = default;
};

/// A dart of an opened piece.
struct DartSpot {
  std::size_t edge = 0;
  std::size_t dart = 0;
  auto operator<=>(const DartSpot&) const = default;
};

/// A piece with its edges taken apart, as all dart moves work on it: in the order of the outline,
/// so that what lies between two darts can be turned as one. `piece` keeps the rest: it has no
/// edges and no darts meanwhile, and its marks are stale.
struct Opened {
  Piece piece;
  std::vector<OpenEdge> edges;
  std::vector<Anchor> notches;                  ///< as piece.notches
  std::vector<std::array<Anchor, 2>> fullness;  ///< ends, as piece.fullness

  [[nodiscard]] Dart& at(DartSpot spot) { return edges[spot.edge].darts[spot.dart]; }
  [[nodiscard]] const Dart& at(DartSpot spot) const { return edges[spot.edge].darts[spot.dart]; }
};

/// Does `change` to every anchor of a mark.
template <class Change>
void change_anchors(Opened& open, Change&& change) {
  for (Anchor& anchor : open.notches) change(anchor);
  for (auto& ends : open.fullness) {
    for (Anchor& anchor : ends) change(anchor);
  }
}

/// Takes a piece apart and puts it together again; darts are then in the order of the outline.
/// Peaks are taken over as they are.
Opened opened(const Piece& piece);
Piece put_together(const Opened& open);

std::optional<DartSpot> find_dart(const Opened& open, std::string_view name);
/// By its name, or by the part of the block that it is.
std::optional<std::size_t> find_edge(const Opened& open, std::string_view name);

/// Length of an edge with its darts closed, in mm; gathers are not drawn up.
double closed_length(const OpenEdge& edge);

/// The place at `along` mm of the closed edge; at a closed mouth it is the end of the stretch
/// before it.
Anchor anchor_at(const Opened& open, std::size_t edge, double along);
Point point_at(const Opened& open, const Anchor& place);
/// How far along the closed edge a place lies, or a dart's mouth.
double closed_along(const OpenEdge& edge, std::size_t stretch, double along);
double mouth_along(const OpenEdge& edge, std::size_t dart);

/// Cuts the edge at a place and puts a dart of no width there, named `name`, about `apex`.
DartSpot slit(Opened& open, const Anchor& place, Point apex, const std::string& name);
/// Takes a dart out whose legs lie on each other, and joins its edge.
void join(Opened& open, DartSpot closed);

/// The path across a dart's mouth: leg end, peak, leg end.
Path mouth_path(const Dart& dart);

/// The dart's peak anew: the seam on the side that the dart is pressed to is led on across the
/// folded dart, as it will be stitched. Straight; true_darts() follows a curved seam. Requires:
/// there is such a dart.
void set_peak(Opened& open, const std::string& name);

}  // namespace blockwright
