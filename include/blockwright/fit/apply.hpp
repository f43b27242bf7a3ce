#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/measure/fitting.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <optional>
#include <string>
#include <vector>

namespace blockwright {

/// A row of the fitting catalogue asked for, as correction_words() understands a correction.
struct RowAmount {
  CorrectionRow row{};
  int sign = 1;     ///< -1: the row's reverse
  double by = 0.0;  ///< mm, as read
  AmountAs as = AmountAs::Length;
  BodySide side = BodySide::Both;
  std::string place;       ///< which dart or seam, for rows of several; as Correction::place
  std::string given = {};  ///< the amount as it was given, for a refusal; may be empty
};

/// The amount as the row counts it, in mm, without sign: what is moved, or cloth on one half of the
/// body. A tuck of depth p takes out 2p, at a centre line p on each half; a seam pinned p beyond
/// its line takes p from each of its two pieces: 2p on each half at the side, p at a centre seam;
/// both shoulder seams taken up count p of each piece however they are read; a whole girth is
/// halved. Common practice, no source.
double counted_amount(const RowAmount& amount);

/// A length of the pattern that a correction moved, or that its row speaks of. Names: "front.side"
/// (an edge, darts closed), "front.waist dart" (a mouth), "front.waist dart
/// point" (how far the stitching stops short of the apex), "front.shoulder_drop" (how far the
/// shoulder point lies under the side neck point, darts closed), whole girths and widths
/// "bust_line", "waist", "across_front", "across_back", "bust_points", "neckline", and the lengths
/// "armhole" (front and back together, one arm), "neck_to_bust", "bust_point_to_waist" (straight
/// down to the level of the centre front waist). All in mm.
struct MovedLength {
  std::string name;
  double before = 0.0;
  double after = 0.0;
  std::optional<double> predicted;  ///< the change that the row's law gives
  bool sample = false;              ///< the law is a ratio found on a sample curve: about 30 %

  [[nodiscard]] double change() const { return after - before; }
};

/// The change that the row's law gives, where it came true on this block: an exact law within
/// 0.5 mm, a ratio within 30 % or 0.5 mm. What did not come true is no forecast: the lengths before
/// and after say what is so.
std::optional<double> forecast_of(const MovedLength& moved);

/// What one correction did. Corrections of the same row, place and side are one: their amounts are
/// added before anything is moved.
struct Effect {
  std::vector<std::size_t> corrections;  ///< indices, as given
  CorrectionRow row{};                   ///< of the first of them
  int stage = 0;
  BodySide side = BodySide::Both;
  double by = 0.0;  ///< mm as the row counts it; negative: its reverse
  /// On the right half, or for a left correction on the left one.
  std::vector<MovedLength> moved;
  std::string given = {};  ///< the amount as it was typed; empty where several were added
  std::string place = {};  ///< of the words of the first of them; may be empty
};

/// A block with corrections applied, what each did, and what the fitter should know: warnings and
/// notes, which name a correction in words that can be typed, with the codes "fit.limit" (more than
/// the row's most; more than a measurement may be off before it is taken again; a dart wider than
/// one should be), "fit.chain" (corrections that together have another cause; of one that is too
/// large besides "fit.limit" says it), "fit.same_line" (corrections that add up on one line or
/// dart; over what a measurement may be off "fit.limit" in its place), "fit.curve" (a curve is no
/// longer fair, or nearly straight, or very hollow), "fit.seam" (right and left no longer meet at
/// the centre), "fit.unfolded" (right and left come as two pieces).
struct FittedPattern {
  Pattern pattern;
  std::vector<Effect> effects;  ///< in the order of work
  Problems remarks;
  /// Every length of the right half, and of the left one where it differs: as drafted, and with all
  /// corrections. Whole girths are of both halves.
  std::vector<MovedLength> right_lengths, left_lengths;
};

/// Applies rows to a drafted block, in the fitter's order: by stage, within a stage as given.
///
/// Guarantees: 1. zero changes nothing; 2. only what the row names moves; side seams walk within
/// 0.1 mm and shoulders keep their ease; 3. corners stay square and joined seams smooth; 4. pieces
/// keep the frame in which they were drafted (rows that move the centre waist move it off the
/// origin).
///
/// With a correction for one side, each piece that differs comes as two, "front_right" and
/// "front_left", cut 1 each with the cloth's right side up, seams named by side: the right front
/// and the left back are mirrored, and seams say where paths run against each other. A front then
/// has a seam at the centre front. Pieces that do not differ stay as they are. Where a row moves
/// the centre on one side only, that is told ("fit.seam"); a fuller bust of one side keeps it.
///
/// Requires: draft_block()'s pattern, no dart moved, not trued. Throws InputError, and `where`
/// names row and amount: "fit.unknown" (no such row), "fit.amount" (below 0, not a number,
/// or more than the piece can take), "fit.negative_dart", "fit.crossing" (the outline or two darts
/// would cross), "fit.curve" (a neckline or an armhole of a radius of less than 8 mm), "fit.close"
/// (an edge less than 40 mm from the bust point), "fit.strap" (a shoulder of less than 25 mm),
/// "fit.place" (no such dart, or an edge used up), "fit.limit" (more than darts and seams can
/// carry, or edges that could no longer be sewn together), "fit.side_missing" (a row for one side
/// needs a side).
FittedPattern apply_rows(const Pattern& block, const std::vector<RowAmount>& rows);

/// The same for corrections in words; withdrawn ones are left out, and indices in the effects are
/// those of the list. Throws also "fit.unknown" for words that correction_words() has not got.
FittedPattern apply_corrections(const Pattern& block, const std::vector<Correction>& corrections);

/// The row that a correction's words mean. Throws "fit.unknown".
RowAmount row_of(const Correction& correction);

/// A correction in the order of work, and what it does to the judgement of the others.
struct OrderedCorrection {
  std::size_t correction = 0;  ///< index in the list
  CorrectionRow row{};
  int stage = 0;
  /// Corrections of the list, of the same side, whose judgement this one makes void: judge them
  /// again on the next toile before they are believed.
  std::vector<std::size_t> voids;
  /// Rows to look at on the next toile because of this one.
  std::vector<CorrectionRow> look_at;
};

/// Sorts by stage, within a stage as given; withdrawn corrections are left out. Throws InputError
/// "fit.unknown" for unknown words.
std::vector<OrderedCorrection> order_corrections(const std::vector<Correction>& corrections);

/// An edge closer to the bust point than this cannot be made up, in mm. Common practice, no source.
inline constexpr double kLeastToBustPoint = 40.0;
/// Half a back neckline is at least this share of the whole neckline: the nape alone takes more.
/// Ours: drafted blocks of 300 people have 0.16 to 0.22.
inline constexpr double kLeastBackNeck = 0.12;
/// A correction makes a shoulder longer by at most this, in mm: more is another shoulder. Ours.
inline constexpr double kMostShoulderGain = 25.0;
/// Least radius of a neckline or an armhole after a correction, in mm, unless it was less before.
/// Ours: a finger's breadth; a smaller one cannot be bound or faced flat.
inline constexpr double kLeastRadius = 8.0;
/// Shortest shoulder, in mm. Common practice, no source.
inline constexpr double kLeastShoulder = 25.0;

}  // namespace blockwright
