#pragma once

#include "blockwright/geometry/path.hpp"

namespace blockwright {

/// How far the points of an offset may lie from the true parallel, in mm.
inline constexpr double kOffsetTolerance = 0.01;
/// A mitre may reach this many offset distances from its corner; beyond it the corner is bevelled.
inline constexpr double kMitreLimit = 2.0;

/// The path that runs beside `path` at `distance` mm: to its right where positive (outside an
/// anticlockwise outline), to its left where negative. 0 gives the path itself.
///
/// Straight strokes stay straight; cubics are fitted anew from exact points and tangents of the
/// parallel and halved until they hold kOffsetTolerance. Corners of the path are mitred where the
/// offset side is the outer one, bevelled beyond kMitreLimit, and cut off where the neighbouring
/// strokes meet on the inner side; if these do not meet (a stroke shorter than the corner takes),
/// the result goes back through the corner and crosses itself there.
///
/// Guarantees: 1. it starts and ends square to the path's ends; 2. its points lie within
/// kOffsetTolerance of the true parallel, mitres excepted. Where the path bends more sharply than
/// `distance` on the inner side, the true parallel turns back on itself and so does the result. Not
/// for paths with a cusp inside a stroke: it is bridged by a straight stroke.
Path offset(const Path& path, double distance);

}  // namespace blockwright
