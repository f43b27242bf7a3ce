#pragma once

#include "blockwright/pattern/pattern.hpp"

namespace blockwright {

/// Measures the block's pieces with their darts closed, as a tape would: the half body, in mm, and
/// one arm.
class BlockMeasures {
 public:
  /// Requires: `pattern` holds a drafted front and back and outlives this.
  explicit BlockMeasures(const Pattern& pattern);

  [[nodiscard]] const Piece& front() const { return front_; }
  [[nodiscard]] const Piece& back() const { return back_; }
  [[nodiscard]] double bust_line_front() const;
  [[nodiscard]] double bust_line_back() const;
  [[nodiscard]] Angle front_slope() const;
  [[nodiscard]] Angle back_slope() const;
  /// The front's shoulder point with the shoulder dart closed.
  [[nodiscard]] Point closed_front_shoulder_point() const;
  [[nodiscard]] double across_front_half() const;
  [[nodiscard]] double armhole() const;
  [[nodiscard]] double neckline() const;
  [[nodiscard]] double waist() const;
  [[nodiscard]] double side_neck_to_bust_point() const;
  [[nodiscard]] double side_neck_to_waist() const;
  [[nodiscard]] double upper_chest_half() const;

 private:
  const Pattern& pattern_;
  const Piece& front_;
  const Piece& back_;
};

/// x on a piece's side edge at height y; the edge is a straight line.
double side_at(const Piece& piece, double y);

}  // namespace blockwright
