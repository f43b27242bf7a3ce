#include "blockwright/block/drafted_piece.hpp"

#include "blockwright/base/error.hpp"

#include <string>

namespace blockwright {
namespace {

// Where the grain line lies, of the way out to the apex and of the height of the centre line: clear
// of darts, bracket and neck. Ours, by eye.
constexpr double kGrainPlace = 0.35;
constexpr double kGrainFrom = 0.15, kGrainTo = 0.85;

Point place_of(const Piece& piece, const KindLandmark& landmark) {
  const Edge& edge = piece.edges[landmark.edge];
  if (landmark.on == PointOn::Corner) return edge.path.start();
  if (landmark.on == PointOn::Joint) return end_of(edge.path.curves().front());
  const auto* dart = first_where(piece.darts, [&](const Dart& d) { return d.edge == edge.name; });
  require(dart != nullptr, "no dart has the apex that the kind names");
  return dart->apex;
}

Notch notch_of(const PieceKind& kind, const KindNotch& row, double along) {
  return {std::string(row.name),
          std::string(kind.edges[row.edge].name),
          along,
          row.count,
          std::string(row.mate_piece),
          std::string(row.mate_edge)};
}

}  // namespace

Piece drafted_piece(const PieceKind& kind, const DraftedLines& lines) {
  require(lines.edges.size() == kind.edges.size() && lines.notches.size() == kind.notches.size() &&
              lines.balance_lines.size() == kind.balance_lines.size(),
          "a piece has every line of its kind");
  Piece piece;
  piece.name = kind.name;
  piece.kind = &kind;
  piece.cut_on = kind.cut_on;
  for (std::size_t i = 0; i < kind.edges.size(); ++i) {
    piece.edges.push_back({std::string(kind.edges[i].name), kind.edges[i].role, lines.edges[i]});
  }
  piece.darts = lines.darts;
  for (std::size_t i = 0; i < kind.notches.size(); ++i) {
    piece.notches.push_back(notch_of(kind, kind.notches[i], lines.notches[i]));
  }
  for (std::size_t i = 0; i < kind.balance_lines.size(); ++i) {
    piece.balance_lines.push_back(
        {std::string(kind.balance_lines[i].name), lines.balance_lines[i]});
  }
  set_landmarks(piece);
  piece.grainline = lines.grainline;
  return piece;
}

void set_landmarks(Piece& piece) {
  for (const KindLandmark& row : piece.kind->landmarks) {
    const Point at = place_of(piece, row);
    if (Landmark* known = find_named(piece.landmarks, row.name)) {
      known->at = at;
    } else {
      piece.landmarks.push_back({std::string(row.name), at});
    }
  }
}

std::vector<Seam> seams_between(const std::vector<Piece>& pieces) {
  std::vector<Seam> seams;
  for (const Piece& piece : pieces) {
    for (const KindSeam& row : piece.kind->seams) {
      if (find_named(pieces, row.mate_piece) == nullptr) continue;
      seams.push_back({std::string(row.name),
                       {{piece.name, std::string(piece.kind->edges[row.edge].name)}},
                       {{std::string(row.mate_piece), std::string(row.mate_edge)}},
                       0.0,
                       row.mate_runs_back});
    }
  }
  return seams;
}

Segment grain_beside_centre(Point apex, Point centre_neck) {
  return {{kGrainPlace * apex.x, kGrainFrom * centre_neck.y},
          {kGrainPlace * apex.x, kGrainTo * centre_neck.y}};
}

}  // namespace blockwright
