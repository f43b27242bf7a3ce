#include "shown_amounts.hpp"

#include "blockwright/block/kinds.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/text/units.hpp"

#include <algorithm>
#include <optional>

namespace blockwright {
namespace {

using Names = std::vector<std::string>;

/// The named points at both ends of an edge, and at the joint within it.
void add_points_of(const PieceKind& kind, std::size_t edge, Names& names) {
  const std::size_t next = (edge + 1) % kind.edges.size();
  for (const KindLandmark& point : kind.landmarks) {
    const bool end = point.on == PointOn::Corner && (point.edge == edge || point.edge == next);
    const bool joint = point.on == PointOn::Joint && point.edge == edge;
    if (end || joint) names.emplace_back(point.name);
  }
}

void add_mouths(const Piece& piece, BlockEdge part, Names& names) {
  for (const Dart& dart : piece.darts) {
    if (is_part(piece, dart.edge, part)) names.push_back(dart.name + " dart");
  }
}

/// Where a watched length of the whole body ends on a piece; a name that it has not got is passed
/// over.
Names ends_of_whole(std::string_view length, const Piece& piece) {
  if (length == kBustLineAtSide) return {std::string(kBustLineAtSide)};
  if (length.starts_with("across_")) return {std::string(length) + "_point"};
  if (length != "waist") return {"bust_point"};  // bust points, neck to bust, bust point to waist
  Names names;
  add_points_of(*piece.kind, index_of(BlockEdge::Waist), names);
  add_mouths(piece, BlockEdge::Waist, names);
  return names;
}

/// Where a watched length ends: "front.centre_front" at both ends of that edge.
Names ends_of(std::string_view length, const Piece& piece) {
  const std::size_t dot = length.find('.');
  if (dot == std::string_view::npos) return ends_of_whole(length, piece);
  if (length.substr(0, dot) != piece.kind->name) return {};
  const std::string_view rest = length.substr(dot + 1);
  if (rest == "shoulder_drop") return {"shoulder_point"};
  const auto edge = std::ranges::find(piece.kind->edges, rest, &KindEdge::name);
  if (edge == piece.kind->edges.end()) return {std::string(rest)};  // a dart's mouth or point
  Names names;
  add_points_of(*piece.kind, static_cast<std::size_t>(edge - piece.kind->edges.begin()), names);
  return names;
}

/// The names of the places where each watched length may show; none: wherever it moves most.
std::vector<Names> watched_places(const Correction& correction, const Piece& piece) {
  const CorrectionRow row = row_of(correction).row;
  if (fitting_row(row).traits.along_a_seam) return {{std::string(kShoulderSeamPlace)}};
  std::vector<Names> places;
  for (const LengthMoved& length : watched_at(row, correction.place).lengths) {
    const Names ends = ends_of(length.name, piece);
    const bool neck = length.name.ends_with(".neckline") && !ends.empty();
    if (neck) places.push_back({std::string(kNecklinePlace)});  // it is pinned there
    places.push_back(ends);
  }
  return places;
}

/// A piece with one correction alone, and what it moved there.
struct MovedAlone {
  const Piece* piece;
  std::vector<MovedPoint> places;
};

std::vector<MovedAlone> moved_alone(const FittedPattern& fitted, const Pattern& block) {
  std::vector<MovedAlone> moved;
  for (const Piece& piece : fitted.pattern.pieces) {
    const Piece* was = earlier_version(piece, block);
    if (was == nullptr || piece.kind == nullptr) continue;
    moved.push_back({&piece, moved_places(piece, *was, laid_under(piece, *was, Alignment::Still))});
  }
  return moved;
}

/// Null where none of them moved.
const MovedPoint* farthest_of(const Names& names, const std::vector<MovedPoint>& places) {
  return first_where(places, [&](const MovedPoint& place) {  // the farthest first
    return std::ranges::find(names, place.name) != names.end();
  });
}

// The length that the table names first is shown unless the next moves by so many times as much.
constexpr double kClearlyFarther = 2.5;
bool is_clearly_farther(const MovedPoint& a, const MovedPoint& b) {
  return distance(a.was, a.is) > kClearlyFarther * distance(b.was, b.is);
}

/// On the pattern with the correction alone.
struct PlaceAlone {
  std::string piece, place;
  std::optional<double> share;
  Length moved;
};

/// How far along its edge the place lies; none of a named point.
std::optional<double> share_of(const MovedPoint& place, const Piece& piece) {
  const Edge* edge = find_named(piece.edges, place.name);
  if (edge == nullptr) return std::nullopt;
  const double along = nearest(edge->path, place.is).along;
  return closed_from_cut(piece, *edge, along) / sewn_length(piece, *edge);
}
PlaceAlone at(const MovedPoint& place, const Piece& piece) {
  return {piece.name, place.name, share_of(place, piece),
          Length::mm(distance(place.was, place.is))};
}

std::vector<PlaceAlone> places_of(const Correction& correction, const Pattern& block) {
  const FittedPattern alone = apply_corrections(block, {correction});
  const std::vector<MovedAlone> moved = moved_alone(alone, block);
  std::vector<PlaceAlone> found;
  for (const auto& [piece, places] : moved) {
    const MovedPoint* best = nullptr;
    for (const Names& names : watched_places(correction, *piece)) {
      const MovedPoint* place = farthest_of(names, places);
      if (place != nullptr && (best == nullptr || is_clearly_farther(*place, *best))) best = place;
    }
    if (best != nullptr) found.push_back(at(*best, *piece));
  }
  if (!found.empty()) return found;
  for (const auto& [piece, places] : moved) {
    if (!places.empty()) found.push_back(at(places.front(), *piece));
  }
  return found;
}

/// A piece of the pattern with all corrections is that of one alone, or one side of it.
bool is_of(const Piece& piece, const std::string& alone) {
  return piece.name == alone || piece.name.starts_with(alone + "_");
}

/// "here 0.4 cm", where a half, a fold or a girth moves several places, and each by less.
void add_here(const Correction& correction, Length moved, Unit unit,
              std::vector<std::string>& words) {
  if (correction.as == AmountAs::Length) return;
  const bool is_seen = as_printed(moved, unit) != as_printed(correction.by, unit);
  if (is_seen) words.push_back("here " + value_text(moved, unit));
}

}  // namespace

std::vector<ShownAmount> shown_amounts(const std::vector<NumberedCorrection>& corrections,
                                       const BlockRun& run) {
  std::vector<ShownAmount> amounts;
  for (const NumberedCorrection& numbered : corrections) {
    Correction applied = numbered.correction;
    applied.withdrawn = false;
    std::vector<std::string> words = amount_lines(applied, run.unit);
    // "2. 1 cm" would be read as 2.1 cm.
    if (corrections.size() > 1)
      words.front() = "no. " + std::to_string(numbered.number) + ": " + words.front();
    try {
      for (const auto& [alone, place, share, moved] : places_of(applied, run.block.pattern)) {
        std::vector<std::string> lines = words;
        add_here(applied, moved, run.unit, lines);
        for (const Piece& piece : run.fitted.pattern.pieces) {
          if (is_of(piece, alone)) amounts.push_back({piece.name, place, lines, share});
        }
      }
    } catch (const InputError&) {
      continue;  // only with others, such as one that makes room for it; the words tell it
    }
  }
  return amounts;
}

}  // namespace blockwright
