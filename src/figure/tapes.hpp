#pragma once

#include "blockwright/figure/tape_figure.hpp"
#include "blockwright/geometry/fair_path.hpp"

#include <array>
#include <cstddef>

namespace blockwright {

/// Points that a tape runs through, in body mm; held at the first, read off at the last.
struct Course {
  std::array<Point, 3> through = {};
  std::size_t count = 0;
  EndDirections ends = {};
};

/// A tape round the body, seen a little from above: an ellipse of which the front half is seen.
struct Round {
  Point centre = {};
  double across = 0.0;  ///< half its width; 0: the tape is no such
  double before = 0.0;  ///< how deep the front half hangs
  double behind = 0.0;  ///< how high the hidden half rises
  Angle turn = {};      ///< of the ellipse
};

/// Where a tape's number is.
struct NumberPlace {
  double share = 0.5;  ///< of the tape's length; the tape is broken there
  Vec aside = {};      ///< or beside that place, and the tape is whole; body mm
};

/// Which end of a tape is held still.
enum class HeldAt {
  Start,    ///< of its course
  Front,    ///< a tape that goes round is held in front, and read where it comes round to there
  Nowhere,  ///< it is no tape but an angle
};

/// How a measurement is drawn.
struct Tape {
  MeasurementName name;
  TapeFigure figure;
  Course course = {};
  Course hidden = {};  ///< what goes on behind the body
  Round round = {};    ///< in place of a course
  NumberPlace number = {};
  HeldAt held = HeldAt::Start;
  double held_share = 0.25;  ///< a tape that goes round: where it is held, of the part that is seen
};

/// The tape of a measurement.
const Tape& tape_of(MeasurementName name);

}  // namespace blockwright
