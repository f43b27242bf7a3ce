#pragma once

#include "blockwright/base/error.hpp"
#include "blockwright/fit/apply.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "support/blocks.hpp"
#include "support/each_person.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// The blocks of 300 people of the survey's proportions; of 60 under the sanitizers, for fewer tell
/// little of shares and medians.
inline const std::vector<Pattern>& blocks() {
  static const std::vector<Pattern> all = [] {
    std::vector<Pattern> made;
    for (const Session& session : each_person(std::max(60, people(300)), 1988)) {
      made.push_back(checked_block(session).block.pattern);
    }
    return made;
  }();
  return all;
}

/// Each of those blocks, or every fifth, tenth ..., named in what fails during its turn.
inline auto each_block(int step = 1) {
  const int count = (static_cast<int>(blocks().size()) + step - 1) / step;
  const auto block = [step](int i) -> const Pattern& {
    return blocks()[static_cast<std::size_t>(i * step)];
  };
  return blockwright::Each(count, block, [step](int i, const Pattern&) {
    return numbered("blocks()", i * step) + " of survey_people(300, 1988)";
  });
}

/// A share of those blocks as a count, whole ones; the sanitized tests have fewer of them.
inline int share_of_blocks(double share) {
  return static_cast<int>(share * static_cast<double>(blocks().size()));
}

/// A block of usual proportions.
inline const Pattern& usual_block() { return blocks()[9]; }

inline BodySide side_of(const FittingRow& row) {
  return row.stage == kOneSideStage ? BodySide::Left : BodySide::Both;
}

inline RowAmount usual(const FittingRow& row, int sign) {
  return {row.row, sign, row.amount.usual.mm(), AmountAs::Length, side_of(row), ""};
}

/// A row by its number in docs/fitting.md.
constexpr CorrectionRow numbered(int number) { return CorrectionRow{number}; }

/// That row by so many mm on both sides.
inline RowAmount row(int number, double by, const char* place = "", int sign = 1) {
  return {numbered(number), sign, by, AmountAs::Length, BodySide::Both, place};
}

/// "take in side at waist": the words of a correction as they are shown.
inline std::string shown_words(std::string_view action, std::string_view place) {
  std::string words = std::string(action) + " " + std::string(place);
  std::ranges::replace(words, '_', ' ');
  return words;
}

/// Whether a problem speaks of that row, in its words in either direction, of any side.
inline bool is_said_of(std::string_view where, CorrectionRow row) {
  const std::string_view words = where.substr(0, where.find(','));
  return std::ranges::any_of(correction_words(), [&](const CorrectionWords& one) {
    return one.row == row && (words == shown_words(one.action, one.place) ||
                              words == shown_words(opposite_action(one.action), one.place));
  });
}

/// Fitted, or the refusal.
struct Outcome {
  std::optional<FittedPattern> fitted;
  Problem refusal;
};

inline Outcome outcome(const Pattern& block, const std::vector<RowAmount>& rows) {
  try {
    return {apply_rows(block, rows), {}};
  } catch (const InputError& error) {
    return {std::nullopt, error.problem()};
  }
}

/// Change of a length by one row; 0 where it did not move.
inline double change(const Pattern& block, const RowAmount& row, const std::string& name) {
  const FittedPattern fitted = apply_rows(block, {row});
  for (const MovedLength& moved : fitted.effects.front().moved) {
    if (moved.name == name) return moved.change();
  }
  return 0.0;
}

inline double sewn(const Pattern& pattern, const std::string& piece, const std::string& edge) {
  return sewn_length(pattern.piece(piece), pattern.piece(piece).edge(edge));
}

/// Largest distance of points of one path from the other.
inline double apart(const Path& a, const Path& b) {
  double most = 0.0;
  for (int i = 0; i <= 60; ++i) {
    most = std::fmax(most, nearest(b, point_at_length(a, i / 60.0 * length(a))).distance);
  }
  return most;
}

inline double apart(const Pattern& a, const Pattern& b) {
  double most = 0.0;
  for (const Piece& piece : a.pieces) {
    for (const Edge& edge : piece.edges) {
      most = std::fmax(most, apart(edge.path, b.piece(piece.name).edge(edge.name).path));
    }
    for (const Dart& dart : piece.darts) {
      const Dart& other = b.piece(piece.name).dart(dart.name);
      most = std::fmax(most, distance(dart.apex, other.apex));
      most = std::fmax(most, distance(dart.legs[0], other.legs[0]));
    }
  }
  return most;
}

inline bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

inline bool warns(const FittedPattern& fitted, const std::string& code) {
  return std::any_of(fitted.remarks.begin(), fitted.remarks.end(),
                     [&](const Problem& p) { return p.code == code; });
}

}  // namespace blockwright_tests
