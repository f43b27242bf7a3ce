#pragma once

#include "fit/fit_people.hpp"
#include "support/each.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace blockwright_tests {

/// What a row did to one block.
struct TriedRow {
  std::optional<Problem> refusal;
  std::vector<MovedLength> moved;
  bool whole = true;        ///< find_problem() has nothing against its pieces
  bool fair = true;         ///< no "fit.curve"
  double widest_gap = 0.0;  ///< of the edges of its seams beyond what is eased in, mm
};

/// A row, and what it did to each block of blocks().
struct TriedOnAll {
  RowAmount asked;
  std::vector<TriedRow> people;
};

inline double widest_gap(const Pattern& pattern) {
  double widest = 0.0;
  for (const Seam& seam : pattern.seams) {
    const double gap = sewn_length(pattern, seam.a) - sewn_length(pattern, seam.b) - seam.ease_in;
    widest = std::fmax(widest, std::abs(gap));
  }
  return widest;
}

/// Every row in both directions, at each of its places, by its usual amount.
inline std::vector<RowAmount> usual_amounts() {
  std::vector<RowAmount> all;
  for (const FittingRow& row : fitting_catalogue()) {
    for (const Watched& watched : row.watched) {
      for (const int sign : {1, -1}) {
        all.push_back(usual(row, sign));
        all.back().place = watched.place;
      }
    }
  }
  return all;
}

inline TriedRow tried(const Pattern& block, const RowAmount& asked) {
  const Outcome got = outcome(block, {asked});
  if (!got.fitted) return {got.refusal, {}};
  const auto& pieces = got.fitted->pattern.pieces;
  return {std::nullopt, got.fitted->effects.front().moved,
          std::none_of(pieces.begin(), pieces.end(),
                       [](const Piece& piece) { return find_problem(piece).has_value(); }),
          !warns(*got.fitted, "fit.curve"), widest_gap(got.fitted->pattern)};
}

/// Every usual amount tried once on all blocks; test cases tagged [tried] run in one process and
/// share it.
inline const std::vector<TriedOnAll>& tried_rows() {
  static const std::vector<TriedOnAll> all = [] {
    std::vector<TriedOnAll> made;
    for (const RowAmount& asked : usual_amounts()) {
      made.push_back({asked, {}});
      for (const Pattern& block : blocks()) made.back().people.push_back(tried(block, asked));
    }
    return made;
  }();
  return all;
}

inline std::string text_of(const RowAmount& asked) {
  return "row " + std::to_string(number_of(asked.row)) + (asked.sign > 0 ? "" : ", its reverse") +
         (asked.place.empty() ? "" : ", " + asked.place);
}

}  // namespace blockwright_tests
