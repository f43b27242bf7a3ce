#pragma once

#include "blockwright/measure/correction_table.hpp"
#include "parts.hpp"

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// One half of the body: the half front and the half back that are sewn together.
struct HalfBlock {
  Opened front;
  Opened back;
};

/// What a row is asked to do: `by` in mm as the row counts it, with the row's sign; `place` as in
/// Correction, where one row serves several.
struct RowAsk {
  double by = 0.0;
  std::string_view place;
};

/// How near a predicted change is met.
enum class LawKind {
  Exact,  ///< a law of geometry: within 0.5 mm
  Ratio,  ///< a ratio found on a sample curve: within 30 % on nine of ten blocks
  Rough,  ///< a ratio that depends much on the curve: the median of blocks lies within 30 %
};

/// What a row says of a length besides what the fitter watches (Watched in the table): named as in
/// Effect, its change in mm.
struct Law {
  std::string name;
  double change = 0.0;
  LawKind kind = LawKind::Exact;
};

/// A law whose change is so many mm for each mm of the amount; of 0 a length that is kept.
struct LawPerMm {
  std::string_view name;
  double per_mm = 0.0;
  LawKind kind = LawKind::Exact;
};

using RowApply = void(HalfBlock&, const RowAsk&);
using RowLaws = std::vector<Law>(const HalfBlock& before, const RowAsk&);

/// The laws of a row that promises nothing but what the fitter watches.
inline std::vector<Law> no_more_laws(const HalfBlock&, const RowAsk&) { return {}; }

/// What a row does. Rows that are another's reverse, or the same on one side, share its moves.
/// Without its moves or its laws a row does not compile.
struct RowMoves {
  constexpr RowMoves(CorrectionRow of, int towards, RowApply& move, RowLaws& promise)
      : row(of), sign(towards), apply(&move), laws(&promise) {}

  CorrectionRow row;
  int sign;  ///< -1: the moves are those of its reverse
  RowApply* apply;
  RowLaws* laws;
};

/// The moves of a row that does the same to both pieces, or something to one of them.
template <auto move>
void on_front(HalfBlock& half, const RowAsk& ask) {
  half.front = move(half.front, ask.by);
}
template <auto move>
void on_back(HalfBlock& half, const RowAsk& ask) {
  half.back = move(half.back, ask.by);
}
template <auto move>
void on_both(HalfBlock& half, const RowAsk& ask) {
  on_front<move>(half, ask);
  on_back<move>(half, ask);
}
/// What the front loses the back gets.
template <auto move>
void forward(HalfBlock& half, const RowAsk& ask) {
  half.front = move(half.front, -ask.by);
  half.back = move(half.back, ask.by);
}

/// The laws of a row that promises nothing else.
template <const auto& laws>
std::vector<Law> in_proportion(const HalfBlock&, const RowAsk& ask) {
  std::vector<Law> changes;
  for (const LawPerMm& law : laws) {
    const double change = law.per_mm == 0.0 ? 0.0 : law.per_mm * ask.by;
    changes.push_back({std::string(law.name), change, law.kind});
  }
  return changes;
}

/// True if the moves are those of all rows of the part, once each.
constexpr bool are_all_moves_of(RowPart part, std::span<const RowMoves> moves) {
  const auto rows = std::ranges::count(kCorrections, part, &FittingRow::part);
  const auto has_one = [&](const FittingRow& row) {
    return row.part != part || std::ranges::count(moves, row.row, &RowMoves::row) == 1;
  };
  return std::ssize(moves) == rows && std::ranges::all_of(kCorrections, has_one);
}

/// Requires: a row of the fitting catalogue.
const RowMoves& moves_of(CorrectionRow row);

// The moves of each part, in rows_neck.cpp and so on.
extern const std::span<const RowMoves> kNeckMoves, kShoulderMoves, kArmholeMoves, kBustMoves,
    kBackMoves, kLengthMoves, kWaistMoves;

}  // namespace blockwright
