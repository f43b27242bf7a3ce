#pragma once

#include "blockwright/dart/opened.hpp"

#include <utility>
#include <vector>

namespace blockwright {

/// The part of a piece between two darts: what lies between the second leg of the first and the
/// first leg of the second, and is cut off by these legs. The centre waist is never in it.
class Part {
 public:
  /// Requires: first < second. Where the darts have two apexes, the part ends at the straight line
  /// between them.
  Part(const Opened& open, DartSpot first, DartSpot second);

  enum class Where { Inside, Outside, Mouth };
  /// Points on the outline count with their stretch, points on a leg with the leg; a point where
  /// the outline was only now cut belongs to the rest of the piece.
  [[nodiscard]] Where where(Point p) const;
  [[nodiscard]] bool holds(Point p) const { return where(p) == Where::Inside; }
  /// True for the apex of either dart, which both parts share.
  [[nodiscard]] bool is_apex(Point p) const;
  /// The legs of both darts: where a line passes from one part of the piece to another.
  [[nodiscard]] std::vector<Path> borders() const;

 private:
  Dart first_, second_;
  std::vector<Path> stretches_;
  Path ring_;
};

/// The starts of the stretches between two darts, in order.
std::vector<Anchor> stretches_between(const Opened& open, DartSpot first, DartSpot second);

/// A line of the piece in its parts, in order; what is shorter than 1e-6 mm is left out.
std::vector<std::pair<Path, Part::Where>> parted(const Path& line, const Part& part);

}  // namespace blockwright
