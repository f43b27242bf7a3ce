#pragma once

#include "blockwright/geometry/box.hpp"

#include <string>
#include <vector>

namespace blockwright_tests {

using namespace blockwright;

/// A grey picture of a page, addressed in page millimetres from the lower left corner.
class Picture {
 public:
  /// Reads a binary PGM file of a page `page_height` mm high, drawn at `dpi`.
  static Picture read(const std::string& path, double dpi, double page_height);

  /// Sum of blackness over the box, in mm^2 of full black.
  [[nodiscard]] double ink(const Box& box) const;
  [[nodiscard]] double ink() const;
  /// Centre of gravity of the blackness in the box. Throws std::runtime_error if it is blank.
  [[nodiscard]] Point dark_centre(const Box& box) const;
  [[nodiscard]] int columns() const { return columns_; }
  [[nodiscard]] int rows() const { return rows_; }

 private:
  struct Moments {
    double mass = 0.0, x = 0.0, y = 0.0;
  };
  [[nodiscard]] Moments moments(const Box& box) const;

  int columns_ = 0;
  int rows_ = 0;
  double mm_per_pixel_ = 1.0;
  double height_ = 0.0;
  std::vector<unsigned char> grey_;
};

/// Draws one page of a PDF file, counted from 1, with poppler.
Picture page_picture(const std::string& pdf, int page, double dpi, double page_height);

}  // namespace blockwright_tests
