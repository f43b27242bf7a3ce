#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "diagram.hpp"

#include <string>
#include <vector>

namespace blockwright_pictures {

/// Pieces drawn smaller or larger than they are, at some place of a diagram: the point `origin` of
/// the pieces' frame stands at `at` of the diagram.
class Sketch {
 public:
  Sketch(Diagram& diagram, double scale, blockwright::Point at, blockwright::Point origin = {})
      : diagram_(&diagram), scale_(scale), at_(at), origin_(origin) {}

  [[nodiscard]] blockwright::Point operator()(blockwright::Point p) const;
  /// The same sketch, moved on by `by` in the pieces' frame.
  [[nodiscard]] Sketch moved(blockwright::Vec by) const;

  void line(const blockwright::Path& path, Look look) const;
  void line(blockwright::Point a, blockwright::Point b, Look look) const;
  /// Slanting lines, `turned` from their usual slant, inside a closed path.
  void hatch(const blockwright::Path& closed, blockwright::Angle turned = {}) const;
  /// The outline with its darts: legs as far as they are stitched, on to the apex in grey.
  void piece(const blockwright::Piece& piece, Look look) const;
  void notches(const blockwright::Piece& piece) const;
  void label(blockwright::Point p, blockwright::Vec off, const std::string& words) const;
  void point(blockwright::Point p, blockwright::Vec off, const std::string& name) const;

 private:
  [[nodiscard]] blockwright::Path scaled(const blockwright::Path& path) const;

  Diagram* diagram_;
  double scale_;
  blockwright::Point at_, origin_;
};

/// A box about all of the pieces.
blockwright::Box box_about(const std::vector<const blockwright::Piece*>& pieces);

}  // namespace blockwright_pictures
