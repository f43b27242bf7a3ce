#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/report/report.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// One of two versions of a block.
struct Version {
  std::string client;
  std::string name;  ///< "Ondine Marsh, session 2026-03-14, 2 corrections"
  Session session;
  Stage stage;
};

/// How far a named point moved, the versions aligned.
struct LandmarkMove {
  std::string name;  ///< "front.bust_point"
  Length x, y;       ///< out from the centre, up
};

/// Two versions of a block, the older first.
struct Comparison {
  Version before, after;
  std::vector<LandmarkMove> points;
  Unit unit = Unit::Cm;
  std::vector<std::string> files;
  Problems problems;  ///< what is to be looked at
};

/// "Ondine Marsh, two versions compared".
std::string title_of(const Comparison& comparison);

/// What moved: measurements, lengths, darts and named points, in the person's unit.
std::string comparison_text(const Comparison& comparison);
/// The same in mm and degrees, rounded to 0.0001 (docs/formats.md).
std::string comparison_json(const Comparison& comparison);

}  // namespace blockwright
