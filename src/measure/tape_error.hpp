#pragma once

#include "blockwright/measure/measurement_name.hpp"

namespace blockwright {

/// How far repeated readings may lie apart, and beyond twice that is a warning. Our judgement, from
/// the differences allowed between scan and hand measure (ISO 20685: 9 mm on large girths, 4 to 5
/// mm on lengths); the degrees are about what 5 mm make at the end of a shoulder.
inline constexpr ByKind kUsualSpread{
    .girth = Length::mm(10), .length = Length::mm(5), .angle = Measure::degrees(2)};
/// A value further off what the others lead one to expect is questioned, in residual SD. The
/// largest of 2,208 residuals lies at 3.3 to 4.5 for taped items (1988 survey).
inline constexpr double kDoubtfulSd = 3.0;
/// Readings in inches are no round mm: what a limit may be passed by before it counts.
inline constexpr double kRounding = 0.01;

}  // namespace blockwright
