#include "blockwright/dart/folded.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/dart/opened.hpp"
#include "blockwright/geometry/intersections.hpp"
#include "words.hpp"

#include <algorithm>
#include <iterator>

namespace blockwright {
namespace {

// Brings the second leg onto the first.
Angle closing(const Dart& dart) {
  return turn_between(dart.legs[1] - dart.point, dart.legs[0] - dart.point);
}

// Where the line crosses the stitching, or its straight way on; nothing where it ends before.
std::optional<PathPlace> crossing(const Path& drawn, const Placement& folding, const Dart& dart,
                                  const std::string& piece) {
  const Point point = folding(dart.point);
  const auto hits = intersections(drawn, point, unit(folding(dart.legs[0]) - point));
  const auto ahead = [](const LineCrossing& hit) { return hit.along_line > 0.0; };
  const auto count = std::ranges::count_if(hits, ahead);
  if (count == 1) return std::ranges::find_if(hits, ahead)->place;
  if (hits.empty()) return std::nullopt;
  refuse("dart.blocked", piece + "." + dart.name,
         count == 0 ? "the line would run past the point of the dart"
                    : "the line would run over the stitching of the dart twice",
         count == 0
             ? "draw it nearer to the edge that the dart opens on, or hold the dart back less"
             : "draw it with less of a bow");
}

}  // namespace

Folded::Folded(const Piece& piece, std::string_view edge)
    : piece_(piece.name), folding_(1), unfolding_(1) {
  const Opened open = opened(piece);
  const auto found = find_edge(open, edge);
  require(found.has_value(), "no such edge");
  stretches_ = open.edges[*found].stretches;
  darts_ = open.edges[*found].darts;
  for (const Dart& dart : darts_) {
    const Angle by = closing(dart);
    folding_.push_back(Placement::turn(by, dart.point).then(folding_.back()));
    unfolding_.push_back(unfolding_.back().then(Placement::turn(-by, dart.point)));
  }
}

Path Folded::edge() const {
  Path closed;
  for (std::size_t i = 0; i < stretches_.size(); ++i) {
    append(closed, placed(stretches_[i], folding_[i]));
  }
  return without_specks(std::move(closed));
}

std::vector<Path> Folded::laid_back(const Path& drawn) const {
  std::vector<Path> parts;
  PathPlace from;
  for (std::size_t d = 0; d < darts_.size(); ++d) {
    const auto to = crossing(drawn, folding_[d], darts_[d], piece_);
    if (!to) break;
    parts.push_back(placed(part_between(drawn, from, *to), unfolding_[d]));
    from = *to;
  }
  parts.push_back(placed(part_after(drawn, from), unfolding_[parts.size()]));
  return parts;
}

}  // namespace blockwright
