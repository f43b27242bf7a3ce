#pragma once

#include "blockwright/measure/body.hpp"
#include "blockwright/pattern/pattern.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// One measurement, taken again on the finished pieces with their darts closed, on the whole body.
struct MeasureBack {
  MeasurementName name;
  Source source;
  Measure body;        ///< taped or estimated
  Measure ease;        ///< as drawn
  Measure adjustment;  ///< what reconciling did; 0 for most
  Measure pattern;     ///< measured on the pieces
  [[nodiscard]] Measure residual() const { return pattern - body - ease; }
};

struct DartMeasure {
  std::string piece;
  std::string name;
  Angle angle;
  double intake = 0.0;  ///< width of the mouth, mm
  double leg = 0.0;     ///< from the apex, mm
};

/// A length of the finished block, e.g. {"front.armhole", 203.4}.
struct NamedLength {
  std::string name;
  double mm = 0.0;
};

/// What the checks found on one block.
struct CheckReport {
  Problems problems;
  std::vector<MeasureBack> measure_back;
  std::vector<DartMeasure> darts;
  std::vector<NamedLength> lengths;
};

/// How far a measurement may come back off its tape, ease and adjustment.
inline constexpr ByKind kMeasureBackTolerance{
    .girth = Length::mm(0.1), .length = Length::mm(0.1), .angle = Measure::degrees(0.1)};

/// What a check looks at.
struct CheckInput {
  const Pattern& pattern;
  const Body& body;
  const Ease& ease;  ///< as drawn
  const Adjustments& adjustments;
};

/// What must hold of any pieces, a garment's as well as a block's: each is whole (pattern.broken),
/// seams and notches walk within 0.1 mm (check.seam).
Problems check_pattern(const Pattern& pattern);

std::vector<DartMeasure> measured_darts(const Pattern& pattern);
/// Every edge with its darts closed and gathers drawn up, "front.armhole".
std::vector<NamedLength> measured_edges(const Pattern& pattern);

/// Runs all checks on a drafted block (pieces "front" and "back" with their darts open). A block
/// that a fitting has unfolded into sides is judged by apply_rows(), each half as the block's two
/// pieces are here, and by check_pattern().
CheckReport check_block(const CheckInput& input);

}  // namespace blockwright
