#include "blockwright/check/check.hpp"

#include "blockwright/block/kinds.hpp"
#include "checks.hpp"

namespace blockwright {
namespace {

std::vector<NamedLength> measured_lengths(const Pattern& pattern) {
  std::vector<NamedLength> lengths = measured_edges(pattern);
  lengths.push_back({"front.bust_line", front_bust_line(pattern)});
  lengths.push_back({"back.bust_line", back_bust_line(pattern)});
  lengths.push_back({"neckline", 2.0 * half_length(pattern, BlockEdge::Neckline)});
  lengths.push_back({"armhole", half_length(pattern, BlockEdge::Armhole)});
  return lengths;
}

/// Every check, in the order of the report. Each reads and judges, and changes nothing.
constexpr Problems (*kChecks[])(const CheckInput&) = {
    [](const CheckInput& input) { return broken_pieces(input.pattern); },
    check_measure_back,
    check_limits,
    [](const CheckInput& input) { return unequal_seams(input.pattern); },
    check_angles,
    check_armhole,
    check_curves,
    check_darts,
    check_levels,
};

}  // namespace

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
  for (const auto& check : kChecks) {
    const Problems found = check(input);
    report.problems.insert(report.problems.end(), found.begin(), found.end());
  }
  return report;
}

}  // namespace blockwright
