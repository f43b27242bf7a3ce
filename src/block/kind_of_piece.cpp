#include "blockwright/base/error.hpp"
#include "blockwright/block/kinds.hpp"

namespace blockwright {
namespace {

constexpr PieceKind kNoKind = {};

template <class Item>
const Item& required(const Item* item, const char* otherwise) {
  require(item != nullptr, otherwise);
  return *item;
}

Point point_on(const Piece& piece, PointOn on, std::size_t edge) {
  const auto is = [&](const KindLandmark& row) { return row.on == on && row.edge == edge; };
  return piece.landmark(
      required(first_where(kind_of(piece).landmarks, is), "its kind has no such point").name);
}

}  // namespace

const PieceKind& kind_of(const Piece& piece) {
  return piece.kind == nullptr ? kNoKind : *piece.kind;
}

bool is_whole(const Piece& piece) { return sided_name(piece.name).whole == kind_of(piece).name; }

const Piece& piece_of(const Pattern& pattern, const PieceKind& kind) {
  const auto is = [&](const Piece& piece) { return is_a(piece, kind); };
  return required(first_where(pattern.pieces, is), "the pattern has no piece of that kind");
}

const KindEdge* kind_edge(const Piece& piece, std::string_view edge) {
  const Edge* own = find_named(piece.edges, edge);
  return find_named(kind_of(piece).edges, own == nullptr ? edge : own->part_name());
}

bool is_part(const Piece& piece, std::string_view edge, BlockEdge part) {
  const KindEdge* found = kind_edge(piece, edge);
  return found != nullptr && found->part == part;
}

const Edge* find_part(const Piece& piece, BlockEdge part) {
  return first_where(piece.edges, [&](const Edge& e) { return is_part(piece, e.name, part); });
}

const Edge& part_of(const Piece& piece, BlockEdge part) {
  return required(find_part(piece, part), "the piece has no such part");
}

double notch_share(const PieceKind& kind, BlockEdge part) {
  const auto on_part = [&](const KindNotch& n) { return kind.edges[n.edge].part == part; };
  const double share = required(first_where(kind.notches, on_part), "no notch there").share;
  require(share > 0.0, "the draft says where that notch lies");
  return share;
}

const Dart* find_dart_on(const Piece& piece, BlockEdge part) {
  return first_where(piece.darts, [&](const Dart& d) { return is_part(piece, d.edge, part); });
}

const Dart& dart_on(const Piece& piece, BlockEdge part) {
  return required(find_dart_on(piece, part), "no dart opens there");
}

double half_length(const Pattern& pattern, BlockEdge part) {
  const Piece &front = piece_of(pattern, kBodiceFront), &back = piece_of(pattern, kBodiceBack);
  return sewn_length(front, part_of(front, part)) + sewn_length(back, part_of(back, part));
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
    const KindLandmark* row = find_named(kind_of(piece).landmarks, landmark.name);
    return row != nullptr && row->use == use;
  });
}

const BalanceLine* find_line(const Piece& piece, LineUse use) {
  return first_where(piece.balance_lines,
                     [&](const BalanceLine& line) { return line_use(piece, line.name) == use; });
}

LineUse line_use(const Piece& piece, std::string_view line) {
  const KindLine* row = find_named(kind_of(piece).balance_lines, line);
  return row == nullptr ? LineUse::Plain : row->use;
}

const DartPosition* find_position(const Piece& piece, std::string_view name) {
  if (!is_whole(piece)) return nullptr;
  const auto& all = kind_of(piece).dart_positions;
  if (const DartPosition* found = find_named(all, name)) return found;
  return first_where(all, [&](const DartPosition& p) { return p.edge == name; });
}

const DartPosition& position_on(const PieceKind& kind, BlockEdge part) {
  const auto& edge = required(
      first_where(kind.edges, [&](const KindEdge& e) { return e.part == part; }), "no such part");
  const auto opens_there = [&](const DartPosition& p) { return p.edge == edge.name; };
  return required(first_where(kind.dart_positions, opens_there), "no dart may open there");
}

}  // namespace blockwright
