#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"
#include "blockwright/pattern/sides.hpp"

#include <algorithm>

namespace blockwright {
namespace {

template <class Items, class Is>
auto first_where(const Items& items, Is&& is) -> decltype(&*std::begin(items)) {
  const auto it = std::find_if(std::begin(items), std::end(items), is);
  return it == std::end(items) ? nullptr : &*it;
}

template <class Items>
auto named(const Items& items, std::string_view name) {
  return first_where(items, [&](const auto& item) { return item.name == name; });
}

Point point_on(const Piece& piece, PointOn on, std::size_t edge) {
  require(piece.kind != nullptr, "a piece of no kind has no named points");
  const KindLandmark* row = first_where(
      piece.kind->landmarks, [&](const auto& l) { return l.on == on && l.edge == edge; });
  require(row != nullptr, "its kind has no such point");
  return piece.landmark(row->name);
}

}  // namespace

bool is_whole(const Piece& piece) {
  return piece.kind != nullptr && sided_name(piece.name).whole == piece.kind->name;
}

const Piece* find_piece(const Pattern& pattern, const PieceKind& kind) {
  return first_where(pattern.pieces, [&](const Piece& piece) { return is_a(piece, kind); });
}

const Piece& piece_of(const Pattern& pattern, const PieceKind& kind) {
  const Piece* piece = find_piece(pattern, kind);
  require(piece != nullptr, "the pattern has no piece of that kind");
  return *piece;
}

const KindEdge* kind_edge(const Piece& piece, std::string_view edge) {
  return piece.kind == nullptr ? nullptr : named(piece.kind->edges, edge);
}

bool is_part(const Piece& piece, std::string_view edge, BlockEdge part) {
  const KindEdge* found = kind_edge(piece, edge);
  return found != nullptr && found->part == part;
}

const Edge* find_part(const Piece& piece, BlockEdge part) {
  return first_where(piece.edges, [&](const Edge& e) { return is_part(piece, e.name, part); });
}

const Edge& part_of(const Piece& piece, BlockEdge part) {
  const Edge* edge = find_part(piece, part);
  require(edge != nullptr, "the piece has no such part");
  return *edge;
}

const Dart* find_dart_on(const Piece& piece, BlockEdge part) {
  return first_where(piece.darts, [&](const Dart& d) { return is_part(piece, d.edge, part); });
}

const Dart& dart_on(const Piece& piece, BlockEdge part) {
  const Dart* dart = find_dart_on(piece, part);
  require(dart != nullptr, "no dart opens there");
  return *dart;
}

double half_length(const Pattern& pattern, BlockEdge part) {
  double sum = 0.0;
  for (const PieceKind* kind : {&kBodiceFront, &kBodiceBack}) {
    const Piece& piece = piece_of(pattern, *kind);
    sum += sewn_length(piece, part_of(piece, part));
  }
  return sum;
}

Point corner_point(const Piece& piece, Corner corner) {
  return point_on(piece, PointOn::Corner, static_cast<std::size_t>(corner));
}
Point across_point(const Piece& piece) {
  return point_on(piece, PointOn::Joint, index_of(BlockEdge::Armhole));
}
Point apex_point(const Piece& piece) {
  return point_on(piece, PointOn::Apex, index_of(BlockEdge::Shoulder));
}

const Landmark* find_landmark(const Piece& piece, PointUse use) {
  return first_where(piece.landmarks, [&](const Landmark& landmark) {
    const KindLandmark* row =
        piece.kind == nullptr ? nullptr : named(piece.kind->landmarks, landmark.name);
    return row != nullptr && row->use == use;
  });
}

const BalanceLine* find_line(const Piece& piece, LineUse use) {
  return first_where(piece.balance_lines,
                     [&](const BalanceLine& line) { return line_use(piece, line.name) == use; });
}

LineUse line_use(const Piece& piece, std::string_view line) {
  const KindLine* row = piece.kind == nullptr ? nullptr : named(piece.kind->balance_lines, line);
  return row == nullptr ? LineUse::Plain : row->use;
}

const DartPosition* find_position(const Piece& piece, std::string_view name) {
  if (!is_whole(piece)) return nullptr;
  const auto& all = piece.kind->dart_positions;
  if (const DartPosition* found = named(all, name)) return found;
  return first_where(all, [&](const DartPosition& p) { return p.edge == name; });
}

const DartPosition& position_on(const PieceKind& kind, BlockEdge part) {
  const KindEdge* edge = first_where(kind.edges, [&](const KindEdge& e) { return e.part == part; });
  require(edge != nullptr, "the kind has no such part");
  const DartPosition* found =
      first_where(kind.dart_positions, [&](const DartPosition& p) { return p.edge == edge->name; });
  require(found != nullptr, "no dart may open there");
  return *found;
}

}  // namespace blockwright
