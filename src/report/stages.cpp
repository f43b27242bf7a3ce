#include "blockwright/report/report.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

// Changes below this are rounding, in mm.
constexpr double kSameLength = 1e-6;

bool same(Length a, Length b) { return std::abs((a - b).mm()) < kSameLength; }

bool same(const DartMeasure& a, const DartMeasure& b) {
  return same(Length::mm(a.intake), Length::mm(b.intake)) &&
         same(Length::mm(a.leg), Length::mm(b.leg));
}

const DartMeasure* dart_like(const std::vector<DartMeasure>& darts, const DartMeasure& like) {
  const auto found = std::find_if(darts.begin(), darts.end(), [&](const DartMeasure& dart) {
    return dart.piece == like.piece && dart.name == like.name;
  });
  return found == darts.end() ? nullptr : &*found;
}

std::vector<DartChange> dart_changes(const Pattern& before, const Pattern& after) {
  const auto was = measured_darts(before), is = measured_darts(after);
  std::vector<DartChange> changes;
  for (const DartMeasure& dart : was) {
    const DartMeasure* now = dart_like(is, dart);
    if (now == nullptr) {
      changes.push_back({dart, std::nullopt});
    } else if (!same(dart, *now)) {
      changes.push_back({dart, *now});
    }
  }
  for (const DartMeasure& dart : is) {
    if (dart_like(was, dart) == nullptr) changes.push_back({std::nullopt, dart});
  }
  return changes;
}

struct EdgeLength {
  Length cut, sewn;
};

EdgeLength length_of(const Piece& piece, const Edge& edge) {
  return {Length::mm(length(edge.path)), Length::mm(sewn_length(piece, edge))};
}

/// Of the edge of that name, if the pattern has it.
std::optional<EdgeLength> length_like(const Pattern& pattern, const Piece& piece,
                                      const Edge& edge) {
  const auto same_piece = std::ranges::find(pattern.pieces, piece.name, &Piece::name);
  if (same_piece == pattern.pieces.end()) return std::nullopt;
  const auto same_edge = std::ranges::find(same_piece->edges, edge.name, &Edge::name);
  if (same_edge == same_piece->edges.end()) return std::nullopt;
  return length_of(*same_piece, *same_edge);
}

/// Of pieces whose edges were, or were not, in the pattern before.
std::vector<LengthChange> edge_changes(const Pattern& before, const std::vector<Piece>& after) {
  std::vector<LengthChange> changes;
  for (const Piece& piece : after) {
    for (const Edge& edge : piece.edges) {
      const auto was = length_like(before, piece, edge);
      const EdgeLength is = length_of(piece, edge);
      if (was && same(was->cut, is.cut) && same(was->sewn, is.sewn)) continue;
      LengthChange change{piece.name + "." + edge.name, {}, is.sewn, {}, is.cut, {}};
      if (was) change.before = was->sewn, change.cut_before = was->cut;
      changes.push_back(change);
    }
  }
  return changes;
}

}  // namespace

Stage stage_of(std::string name, const Pattern& pattern) {
  return {std::move(name), measured_edges(pattern), measured_darts(pattern), {}};
}

Change change_between(const Pattern& before, const Pattern& after) {
  return {{}, edge_changes(before, after.pieces), dart_changes(before, after), {}};
}

}  // namespace blockwright
