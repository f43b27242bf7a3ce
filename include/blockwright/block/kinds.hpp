#pragma once

#include "blockwright/block/dart_position.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace blockwright {

/// The corners of a half bodice piece and its edges; each edge starts at the corner above it in the
/// list, in the order of the outline.
enum class Corner : std::size_t {
  CentreWaist,
  SideWaist,
  Underarm,
  ShoulderPoint,
  SideNeck,
  CentreNeck,
};
enum class BlockEdge : std::size_t {
  Waist,
  Side,
  Armhole,
  Shoulder,
  Neckline,
  Centre,
  Other,  ///< an edge that is none of a bodice's
};
/// Where the edge comes in the outline of a half bodice piece.
constexpr std::size_t index_of(BlockEdge edge) { return static_cast<std::size_t>(edge); }

/// What a kind of piece is, as data: one table each in src/block/kinds.cpp. Whoever drafts, fits,
/// checks or prints a piece reads it from here, so that a further kind needs none of them changed.

/// What must hold at a corner of a block (check.angle).
enum class CornerShape {
  Free,
  Square,  ///< a right angle, so that the edge runs on across the fold or centre seam
  Smooth,  ///< with the corner that it meets at a seam, half a turn: the joined edge runs on
};

/// An edge of a kind, and the corner that it starts at.
struct KindEdge {
  std::string_view name;
  BlockEdge part = BlockEdge::Other;
  EdgeRole role = EdgeRole::Seam;  ///< as drafted
  CornerShape start = CornerShape::Free;
  std::optional<int> most_bends = {};  ///< how often its curve may turn back; empty: any number
  double least_radius = 0.0;  ///< of a drafted one, in mm: where it bends more it is a corner
};

/// Where a named point is found again when the outline has been redrawn.
enum class PointOn {
  Corner,  ///< where the edge starts
  Joint,   ///< where the edge's first stroke ends: the across point of an armhole
  Apex,    ///< of the first dart on the edge
};

/// What a named point is for on paper.
enum class PointUse {
  Plain,
  Marked,       ///< a ringed cross on the toile, a hole in the card
  CentreWaist,  ///< versions are laid on each other here, by waist or by neck
  CentreNeck,
};

struct KindLandmark {
  std::string_view name;
  PointOn on = PointOn::Corner;
  std::size_t edge = 0;
  PointUse use = PointUse::Plain;
};

struct KindNotch {
  std::string_view name;
  std::size_t edge = 0;
  int count = 1;
  std::string_view mate_piece = {}, mate_edge = {};
  double share = 0.0;  ///< where it lies, of the edge's length; 0: where a line of the draft ends
};

enum class LineUse { Plain, Bust, Across, Waist };

struct KindLine {
  std::string_view name;
  LineUse use = LineUse::Plain;
};

/// A seam of a kind's edge with an edge of its own or of another kind.
struct KindSeam {
  std::string_view name;
  std::size_t edge = 0;
  std::string_view mate_piece, mate_edge;
  bool mate_runs_back = false;
};

/// A piece is drafted for one side of the body: cut with the cloth's right side up, a front is the
/// wearer's left one and a back her right one.
enum class DraftedFor { Left, Right };

struct PieceKind {
  std::string_view name;
  CutOn cut_on = CutOn::Pair;
  DraftedFor drafted_for = DraftedFor::Left;
  int notch_count = 1;              ///< one on a front, two on a back, to tell them apart
  std::span<const KindEdge> edges;  ///< in the order of the outline
  std::span<const KindLandmark> landmarks;
  std::span<const KindNotch> notches;
  std::span<const KindLine> balance_lines;
  std::span<const KindSeam> seams;
  std::span<const DartPosition> dart_positions;  ///< where darts may open
};

extern const PieceKind kBodiceFront, kBodiceBack;

/// True for a piece of that kind, whole or a panel cut from it, of one side of the body or of both.
inline bool is_a(const Piece& piece, const PieceKind& kind) { return piece.kind == &kind; }
/// True for a piece that is not a panel cut from one: it has its kind's name, for one side of the
/// body with the side's ending.
bool is_whole(const Piece& piece);
/// The piece's kind; for a piece of none, a kind without edges or anything else.
const PieceKind& kind_of(const Piece& piece);
/// The pattern's first piece of a kind. Throws std::logic_error if there is none.
const Piece& piece_of(const Pattern& pattern, const PieceKind& kind);

/// The kind's edge of that name; null for a piece of no kind, and for the seam of a panel.
const KindEdge* kind_edge(const Piece& piece, std::string_view edge);
/// True if the piece's edge of that name is that part of a bodice.
bool is_part(const Piece& piece, std::string_view edge, BlockEdge part);
/// The piece's edge that is that part; null, or std::logic_error, if there is none.
const Edge* find_part(const Piece& piece, BlockEdge part);
const Edge& part_of(const Piece& piece, BlockEdge part);
/// Where the first notch on that part lies, of the edge's length. Requires: it lies by a share.
double notch_share(const PieceKind& kind, BlockEdge part);
/// The first dart on that part, in the piece's order; null, or std::logic_error, if there is none.
const Dart* find_dart_on(const Piece& piece, BlockEdge part);
const Dart& dart_on(const Piece& piece, BlockEdge part);
/// The length of that part on the half front and half back together, darts closed, in mm.
/// Requires: a pattern with both.
double half_length(const Pattern& pattern, BlockEdge part);

/// Named points of a half bodice piece. Throw std::logic_error if the piece has none.
Point corner_point(const Piece& piece, Corner corner);
Point across_point(const Piece& piece);
Point apex_point(const Piece& piece);
/// Null if the piece has none for that use.
const Landmark* find_landmark(const Piece& piece, PointUse use);
const BalanceLine* find_line(const Piece& piece, LineUse use);
/// What the piece's balance line of that name is for.
LineUse line_use(const Piece& piece, std::string_view line);

/// The place of that name (or edge name) on a whole piece; null if there is none.
const DartPosition* find_position(const Piece& piece, std::string_view name);
/// The kind's first place on that part, where its dart is drafted. Requires: there is one.
const DartPosition& position_on(const PieceKind& kind, BlockEdge part);

}  // namespace blockwright
