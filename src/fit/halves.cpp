#include "halves.hpp"

#include "blockwright/pattern/sides.hpp"
#include "half_piece.hpp"
#include "limits.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace blockwright {
namespace {

constexpr std::string_view kSides[] = {kRightEnding, kLeftEnding};

// Halves are drawn with x from the centre to the side. Cut with the cloth's right side up, such a
// front is the wearer's left one, and such a back her right one: the other is its mirror image.
bool is_mirror_image(std::string_view piece, std::size_t side) {
  return piece == "front" ? side == 0 : side == 1;
}

// One side's piece of two: named by its side, cut once, and without a fold.
Piece one_of_two(Piece piece, std::size_t side) {
  if (is_mirror_image(piece.name, side)) piece = mirrored(piece);
  piece.name += kSides[side];
  piece.cut_on = CutOn::One;
  for (Edge& edge : piece.edges) {
    if (edge.role == EdgeRole::Fold) edge.role = EdgeRole::Seam;
  }
  return piece;
}

bool is_unfolded(const std::vector<std::string>& names, const std::string& piece) {
  return std::find(names.begin(), names.end(), piece) != names.end();
}

std::vector<EdgeOf> on_side(std::vector<EdgeOf> edges, const std::vector<std::string>& unfolded,
                            std::size_t side) {
  for (EdgeOf& edge : edges) {
    if (is_unfolded(unfolded, edge.piece)) edge.piece += kSides[side];
  }
  return edges;
}

bool runs_back(const std::vector<EdgeOf>& edges, const std::vector<std::string>& unfolded,
               std::size_t side) {
  const std::string& piece = edges.front().piece;
  return is_unfolded(unfolded, piece) && is_mirror_image(piece, side);
}

Seam seam_on_side(const Seam& seam, const std::vector<std::string>& unfolded, std::size_t side) {
  const bool against = runs_back(seam.a, unfolded, side) != runs_back(seam.b, unfolded, side);
  return {seam.name + std::string(kSides[side]), on_side(seam.a, unfolded, side),
          on_side(seam.b, unfolded, side), seam.ease_in, seam.b_runs_back != against};
}

std::vector<Seam> seams_of(const Pattern& block, const std::vector<std::string>& unfolded) {
  std::vector<Seam> seams;
  for (const Seam& seam : block.seams) {
    const Seam right = seam_on_side(seam, unfolded, 0);
    if (right.a == seam.a && right.b == seam.b) {
      seams.push_back(seam);
      continue;
    }
    seams.push_back(right);
    seams.push_back(seam_on_side(seam, unfolded, 1));
  }
  return seams;
}

// A mate on an unfolded piece is on the same side of the body; a piece that was not unfolded names
// the right one.
void name_mates(Piece& piece, const std::vector<std::string>& unfolded) {
  const bool left = piece.name.ends_with(kLeftEnding);
  for (Notch& notch : piece.notches) {
    if (is_unfolded(unfolded, notch.mate_piece)) notch.mate_piece += kSides[left ? 1 : 0];
  }
}

// Where the two sides' centres differ, judge_centres() tells; the seam says by how much.
void add_centre_front(Pattern& pattern, const Piece& front, bool unfolded) {
  const std::string name = "centre_front";
  if (unfolded) {
    Seam seam{name, {{"front_right", name}}, {{"front_left", name}}, 0.0, true};
    seam.ease_in = sewn_length(pattern, seam.a) - sewn_length(pattern, seam.b);
    if (std::abs(seam.ease_in) <= kMeetsAtCentre) seam.ease_in = 0.0;
    pattern.seams.push_back(seam);
  } else if (front.cut_on == CutOn::Pair) {
    pattern.seams.push_back({name, {{"front", name}}, {{"front", name}}, 0.0});
  }
}

}  // namespace

Halves halves_of(const Pattern& block) {
  return {{opened(block.piece("front")), opened(block.piece("back"))}, std::nullopt};
}

Pattern joined(const Halves& halves, const Pattern& block, Problems& remarks) {
  Pattern pattern;
  std::vector<std::string> unfolded;
  const Opened* sides[2][2] = {{&halves.right.front, &halves.left().front},
                               {&halves.right.back, &halves.left().back}};
  for (const auto& [right, left] : sides) {
    const Piece& before = block.piece(right->piece.name);
    Piece one = finished_piece(*right, before);
    if (halves.alike()) {
      pattern.pieces.push_back(std::move(one));
      continue;
    }
    Piece two = finished_piece(*left, before);
    if (same_shape(one, two)) {
      pattern.pieces.push_back(std::move(one));
      continue;
    }
    unfolded.push_back(before.name);
    pattern.pieces.push_back(one_of_two(std::move(one), 0));
    pattern.pieces.push_back(one_of_two(std::move(two), 1));
    remarks.push_back({Severity::Note, "fit.sides", before.name,
                       "its two sides differ: it comes as a right and a left piece, cut 1 each",
                       before.name == "front"
                           ? "the centre front becomes a seam; without one, join both on paper "
                             "along the centre front before cutting"
                           : ""});
  }
  for (Piece& piece : pattern.pieces) name_mates(piece, unfolded);
  pattern.seams = seams_of(block, unfolded);
  add_centre_front(pattern, pattern.pieces.front(), is_unfolded(unfolded, "front"));
  return pattern;
}

}  // namespace blockwright
