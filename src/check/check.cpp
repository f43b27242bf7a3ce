#include "blockwright/check/check.hpp"

#include "block_measures.hpp"
#include "measure_back.hpp"
#include "shape_checks.hpp"

namespace blockwright {
namespace {

std::vector<NamedLength> measured_lengths(const Pattern& pattern) {
  std::vector<NamedLength> lengths = measured_edges(pattern);
  const BlockMeasures block(pattern);
  lengths.push_back({"front.bust_line", block.bust_line_front()});
  lengths.push_back({"back.bust_line", block.bust_line_back()});
  lengths.push_back({"neckline", 2.0 * block.neckline()});
  lengths.push_back({"armhole", block.armhole()});
  return lengths;
}

}  // namespace

const std::vector<Check>& all_checks() {
  static const std::vector<Check> checks = {
      {"pattern.broken", "every piece is closed, simple and whole", check_pieces},
      {"check.measure_back", "every measurement comes back", check_measure_back},
      {"draft.adjusted", "no measurement had to give way", check_limits},
      {"check.seam", "joined seams and notches walk", check_seams},
      {"check.angle", "corners are square, joined seams smooth", check_angles},
      {"check.curve", "necklines and armholes are fair", check_curves},
      {"check.dart", "darts lie whole within their pieces", check_darts},
      {"check.level", "balance lines are level and meet", check_levels},
      {"check.armhole", "the armhole suits the armscye", check_armhole},
  };
  return checks;
}

std::vector<DartMeasure> measured_darts(const Pattern& pattern) {
  std::vector<DartMeasure> darts;
  for (const Piece& piece : pattern.pieces) {
    for (const Dart& dart : piece.darts) {
      darts.push_back({piece.name, dart.name, dart.angle(), dart.intake(), dart.leg()});
    }
  }
  return darts;
}

std::vector<NamedLength> measured_edges(const Pattern& pattern) {
  std::vector<NamedLength> lengths;
  for (const Piece& piece : pattern.pieces) {
    for (const Edge& edge : piece.edges) {
      lengths.push_back({piece.name + "." + edge.name, sewn_length(piece, edge)});
    }
  }
  return lengths;
}

Problems check_pattern(const Pattern& pattern) {
  Problems problems = broken_pieces(pattern);
  const Problems seams = unequal_seams(pattern);
  problems.insert(problems.end(), seams.begin(), seams.end());
  return problems;
}

CheckReport check_block(const CheckInput& input) {
  CheckReport report;
  report.measure_back = measure_back(input);
  report.darts = measured_darts(input.pattern);
  report.lengths = measured_lengths(input.pattern);
  for (const Check& check : all_checks()) {
    const Problems found = check.run(input);
    report.problems.insert(report.problems.end(), found.begin(), found.end());
  }
  return report;
}

}  // namespace blockwright
