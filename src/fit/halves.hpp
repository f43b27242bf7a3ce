#pragma once

#include "blockwright/fit/apply.hpp"
#include "rows.hpp"

#include <optional>

namespace blockwright {

/// Both halves of the body, each drawn as a right half.
struct Halves {
  HalfBlock right;
  std::optional<HalfBlock> own_left;  ///< empty while nothing was done to one of them alone

  [[nodiscard]] bool alike() const { return !own_left; }
  [[nodiscard]] const HalfBlock& left() const { return own_left ? *own_left : right; }
};

Halves halves_of(const Pattern& block);

/// The halves of a block with corrections in words: see apply_corrections().
Halves fitted_halves(const Pattern& block, const std::vector<Correction>& corrections);

/// The pattern of both halves: a piece whose halves do not differ stays one piece, others come as
/// right and left, cut 1 each. Says in `remarks` what was unfolded.
Pattern joined(const Halves& halves, const Pattern& block, Problems& remarks);

/// The piece put together again, its landmarks and balance lines where the outline now has them. A
/// piece whose edges and darts are what they were is returned as `before`.
Piece finished_piece(const Opened& open, const Piece& before);

/// True if edges, darts and marks are the same to the last bit.
bool same_shape(const Opened& a, const Opened& b);

/// A length by its name in Effect.
struct FitLength {
  std::string name;
  double mm = 0.0;
};

/// All lengths of a half and, for whole girths and widths, of the other half with it.
std::vector<FitLength> fit_lengths(const HalfBlock& half, const HalfBlock& other);

/// True for the girths and widths that both halves make together.
bool is_whole(std::string_view name);

/// Edges of the two sides that differ by no more meet at the centre, in mm.
inline constexpr double kMeetsAtCentre = 0.1;

/// A half before something was done to it, and after it.
struct Redrawn {
  const HalfBlock& before;
  const HalfBlock& after;
};

/// Of a garment without armholes theirs are cut away, and need not be round.
enum class ArmholeEdge { Kept, CutAway };

/// Throws InputError for what cannot be cut after a row: see apply_rows().
void require_possible(const Redrawn& half, ArmholeEdge armhole = ArmholeEdge::Kept);

/// Warnings about the half as a whole against the block: darts grown too wide ("fit.limit"), curves
/// and corners no longer fair ("fit.curve").
Problems judge_half(const Redrawn& half);

/// Warnings where the two sides of the body no longer meet at the centre ("fit.seam").
Problems judge_centres(const Halves& halves);

/// What corrections say together: amounts over the catalogue's ("fit.limit"), faults with another
/// cause ("fit.chain"), amounts that add up on one line or dart ("fit.same_line", or "fit.limit"
/// where they change more than a tape may be off). `shoulder` is the shoulder's length in mm, for
/// slopes.
Problems judge_together(const std::vector<Effect>& effects, double shoulder);

/// "waist girth" for waist_girth.
std::string tape_words(MeasurementName name);

/// "take in side at waist, left": the words in which it can be asked for, and which no other
/// correction has.
std::string words_of(const Effect& effect);
/// The amount as it was typed; what several come to together.
Wording amount_words(const Effect& effect);

}  // namespace blockwright
