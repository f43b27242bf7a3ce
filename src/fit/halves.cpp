#include "halves.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr std::string_view kSides[] = {kRightEnding, kLeftEnding};

// Halves are drawn as their kind is drafted; the other side's piece is its mirror image.
bool is_mirror_image(const PieceKind& kind, std::size_t side) {
  return (kind.drafted_for == DraftedFor::Left) == (side == 0);
}

// One side's piece of two: named by its side, cut once, and without a fold.
Piece one_of_two(Piece piece, std::size_t side) {
  if (is_mirror_image(*piece.kind, side)) piece = mirrored(piece);
  piece.name += kSides[side];
  piece.cut_on = CutOn::One;
  for (Edge& edge : piece.edges) {
    if (edge.role == EdgeRole::Fold) edge.role = EdgeRole::Seam;
  }
  return piece;
}

// A block, and its pieces that come as a right and a left one.
struct Unfolding {
  const Pattern& block;
  std::vector<std::string> names = {};

  [[nodiscard]] bool has(const std::string& piece) const {
    return std::ranges::count(names, piece) > 0;
  }
  [[nodiscard]] bool runs_back(const EdgeOf& edge, std::size_t side) const {
    return has(edge.piece) && is_mirror_image(*block.piece(edge.piece).kind, side);
  }
  [[nodiscard]] std::vector<EdgeOf> on_side(std::vector<EdgeOf> edges, std::size_t side) const {
    for (EdgeOf& edge : edges) {
      if (has(edge.piece)) edge.piece += kSides[side];
    }
    return edges;
  }
  [[nodiscard]] Seam on_side(const Seam& seam, std::size_t side) const {
    const bool against = runs_back(seam.a.front(), side) != runs_back(seam.b.front(), side);
    return {seam.name + std::string(kSides[side]), on_side(seam.a, side), on_side(seam.b, side),
            seam.ease_in, seam.b_runs_back != against};
  }
};

std::vector<Seam> seams_of(const Unfolding& unfolded) {
  std::vector<Seam> seams;
  for (const Seam& seam : unfolded.block.seams) {
    const Seam right = unfolded.on_side(seam, 0);
    const bool whole = right.a == seam.a && right.b == seam.b;
    seams.push_back(whole ? seam : right);
    if (!whole) seams.push_back(unfolded.on_side(seam, 1));
  }
  return seams;
}

// A mate on an unfolded piece is on the same side of the body; a piece that was not unfolded names
// the right one.
void name_mates(Piece& piece, const Unfolding& unfolded) {
  const std::string_view side = kSides[piece.name.ends_with(kLeftEnding) ? 1 : 0];
  for (Notch& notch : piece.notches) {
    if (unfolded.has(notch.mate_piece)) notch.mate_piece += side;
  }
}

// Where the two sides' centres differ, judge_centres() tells; the seam says by how much.
void add_centre_seam(Pattern& pattern, const Piece& front, bool unfolded) {
  const std::string& name = part_of(front, BlockEdge::Centre).name;
  if (unfolded) {
    const std::string piece(front.kind->name);
    Seam seam{name,
              {{piece + std::string(kRightEnding), name}},
              {{piece + std::string(kLeftEnding), name}},
              0.0,
              true};
    seam.ease_in = sewn_length(pattern, seam.a) - sewn_length(pattern, seam.b);
    if (std::abs(seam.ease_in) <= kMeetsAtCentre) seam.ease_in = 0.0;
    pattern.seams.push_back(seam);
  } else if (front.cut_on == CutOn::Pair) {
    pattern.seams.push_back({name, {{front.name, name}}, {{front.name, name}}, 0.0});
  }
}

// The half that a piece of the block is fitted as; null for a piece that no correction moves.
Opened HalfBlock::*half_of(const Piece& piece) {
  if (is_a(piece, kBodiceFront)) return &HalfBlock::front;
  if (is_a(piece, kBodiceBack)) return &HalfBlock::back;
  return nullptr;
}

Problem told_unfolded(const Piece& piece) {
  return {Severity::Note, "fit.unfolded", piece.name,
          "its two sides differ: it comes as a right and a left piece, cut 1 each",
          piece.cut_on == CutOn::Fold ? "the centre front becomes a seam; without one, join both "
                                        "on paper along the centre front before cutting"
                                      : ""};
}

}  // namespace

Halves halves_of(const Pattern& block) {
  return {{opened(piece_of(block, kBodiceFront)), opened(piece_of(block, kBodiceBack))},
          std::nullopt};
}

Pattern joined(const Halves& halves, const Pattern& block, Problems& remarks) {
  Pattern pattern;
  Unfolding unfolded{block};
  for (const Piece& before : block.pieces) {
    const auto half = half_of(before);
    if (!half) {
      pattern.pieces.push_back(before);
      continue;
    }
    const Opened &right = halves.right.*half, &left = halves.left().*half;
    if (same_shape(right, left)) {
      pattern.pieces.push_back(finished_piece(right, before));
      continue;
    }
    unfolded.names.push_back(before.name);
    remarks.push_back(told_unfolded(before));
    pattern.pieces.push_back(one_of_two(finished_piece(right, before), 0));
    pattern.pieces.push_back(one_of_two(finished_piece(left, before), 1));
  }
  for (Piece& piece : pattern.pieces) name_mates(piece, unfolded);
  pattern.seams = seams_of(unfolded);
  const Piece front = piece_of(pattern, kBodiceFront);
  add_centre_seam(pattern, front, front.name != kBodiceFront.name);
  return pattern;
}

}  // namespace blockwright
