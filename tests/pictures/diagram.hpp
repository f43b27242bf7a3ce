#pragma once

#include "blockwright/geometry/path.hpp"
#include "blockwright/geometry/point.hpp"

#include <string>

namespace blockwright_pictures {

/// How a line of a diagram is drawn.
enum class Look {
  New,      ///< what this step draws: black
  Fault,    ///< what is wrong: black and heavy
  Before,   ///< what stood there before: grey
  Guide,    ///< thin and grey, to be rubbed out
  Compass,  ///< a compass stroke, or a place that a part is turned away from: dashed
};

/// A line drawing that explains a construction, as SVG. Millimetres, y up; what is drawn is placed
/// by the placement that was set last. Labels stand on white so that lines do not cross them out.
class Diagram {
 public:
  Diagram(double width, double height) : width_(width), height_(height) {}

  /// How wide it is shown, in pixels.
  void show_at(double pixels) { shown_ = pixels; }
  /// Everything that follows is put down by this placement.
  void place(const blockwright::Placement& placement) { placement_ = placement; }

  void line(const blockwright::Path& path, Look look);
  void line(blockwright::Point a, blockwright::Point b, Look look);
  /// A compass stroke about `centre` through `through`, `spread` to either side.
  void compass(blockwright::Point centre, blockwright::Point through, blockwright::Angle spread);
  /// A dot.
  void dot(blockwright::Point at);
  /// Lines of text, parted by '\n', beside a place: to its right if `off` points right, to its left
  /// if it points left, else centred.
  void label(blockwright::Point at, blockwright::Vec off, const std::string& text);
  /// A dot with its name.
  void point(blockwright::Point at, blockwright::Vec off, const std::string& name);
  /// A dimension line from a to b, moved `aside` to the left of that direction, its name along it.
  void dimension(blockwright::Point a, blockwright::Point b, double aside, const std::string& name);
  /// The same with its name level beside the line's middle, as label() puts it.
  void dimension(blockwright::Point a, blockwright::Point b, double aside, blockwright::Vec off,
                 const std::string& name);
  /// A dimension curve: the turn of `by` (anticlockwise) about `centre` that begins at `from`.
  void turn(blockwright::Point centre, blockwright::Point from, blockwright::Angle by,
            blockwright::Vec off, const std::string& name);
  /// The mark of a right angle at a corner whose sides run along `a` and `b`.
  void square(blockwright::Point corner, blockwright::Vec a, blockwright::Vec b);
  /// A heading over the drawing, in sheet coordinates.
  void heading(blockwright::Point at, const std::string& text);

  [[nodiscard]] std::string svg(const std::string& title) const;
  /// Writes svg() into a file. Throws std::runtime_error, naming the file.
  void write(const std::string& title, const std::string& file) const;

 private:
  void stroke(const blockwright::Path& placed_path, const std::string& attributes);
  void arrow(blockwright::Point tip, blockwright::Vec pointing);
  void text(blockwright::Point at, double size, const std::string& anchor, double turn,
            const std::string& line);
  [[nodiscard]] std::string at(blockwright::Point p) const;

  double width_, height_, shown_ = 900.0;
  blockwright::Placement placement_;
  std::string body_;
};

}  // namespace blockwright_pictures
