#pragma once

#include "blockwright/draft/bands.hpp"
#include "blockwright/measure/likely_slips.hpp"
#include "blockwright/measure/settled_tape.hpp"
#include "blockwright/measure/tape_changes.hpp"
#include "blockwright/text/units.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A tape session as judged.
struct TapeReport {
  bool in_full = false;  ///< as text: all that is doubted, and how contradictions are settled
  std::string file;      ///< of hers, as a command line needs it
  std::string client;    ///< her name
  std::string session;   ///< its date
  Unit unit = Unit::Cm;
  Body body;
  std::vector<LikelySlip> slips;    ///< all of them, the likeliest first
  std::string since;                ///< date of the session before; empty: there is none
  std::vector<TapeChange> changes;  ///< since then
  SettledTape settled;              ///< of what contradicts each other
  std::vector<Retake> take_first;   ///< by the bands of the block
  Problems problems;                ///< in her unit
};

/// How many measurements of a body were taken and how many estimated from them.
struct TapeCounts {
  int taken = 0, estimated = 0;
};
TapeCounts counts_of(const Body& body);
/// "3 taken, 17 estimated"
std::string counts_text(const TapeCounts& counts);

/// One line for each problem; what to take first where there is none.
std::string tape_text(const TapeReport& report);
/// The report as JSON (docs/formats.md); numbers in mm and degrees, rounded to 0.0001.
std::string tape_json(const TapeReport& report);

}  // namespace blockwright
