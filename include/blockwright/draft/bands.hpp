#pragma once

#include "blockwright/draft/draft.hpp"
#include "blockwright/measure/body_spread.hpp"
#include "blockwright/pattern/edge_band.hpp"

#include <array>
#include <string>
#include <vector>

namespace blockwright {

// How far each line of a block could be off, for what the tape errs by and what the estimates leave
// open. A band holds 19 of 20: kBandSd standard deviations to either side.

/// Of a normal distribution 95 % lie within. Source: any table of it.
inline constexpr double kBandSd = 1.959964;

/// How far a named point could be off, along its piece's x and y.
struct PointBand {
  std::string piece, point;
  Length x, y;
};

/// How far an edge of the finished block could be off.
struct LengthBand {
  std::string piece, edge;
  Length length, off;  ///< its darts closed
  Length aside;        ///< where its line could lie farthest to either side
};

/// What one more careful reading of a measurement would do.
struct Retake {
  MeasurementName name;
  bool taped = false;    ///< it was taken once already
  double narrows = 0.0;  ///< by so much of their present width all bands are narrower then, 0 to 1
};

struct BlockBands {
  std::vector<EdgeBand> edges;
  std::vector<PointBand> points;
  std::vector<LengthBand> lengths;
  /// The one that narrows the bands most, and the one that does so after it. None where the bands
  /// are under a millimetre.
  std::vector<Retake> take_first;
};

/// What to leave at the seams and the opening of a toile: as far as the widest of their bands lies
/// outside its line, and so much to sew.
Length toile_allowance(const BlockBands& bands, const Pattern& block);
/// Common practice, no source.
inline constexpr Length kToSew = Length::mm(10);

/// Drafts the body with its numbers moved by one SD either way, each time all that move together,
/// and puts the differences together. Each place is in its piece's frame, whose origin is the
/// centre waist: what lies far from there could be further off.
///
/// Accuracy: exact for small errors; where a bound of the draft or a further waist dart lies within
/// them, a mean over it. Cost: two drafts for each measurement of the body. Requires: a body from
/// fill_in(), its spread, and `block` is draft_block(body, ease).
BlockBands block_bands(const Body& body, const BodySpread& spread, const Ease& ease,
                       const DraftedBlock& block);

}  // namespace blockwright
