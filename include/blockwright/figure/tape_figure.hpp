#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"
#include "blockwright/measure/measurement_name.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

// Drawn figures of a body with the tapes on it: which measurement runs where, which end is held and
// which is read off. The body is the mean of the 1988 survey in heights and girths; nobody's.

/// A figure for each group of measurements, in the order in which a session goes over the body.
enum class TapeFigure { Girths, Back, Front, Side, Arm };
inline constexpr std::array kTapeFigures = {TapeFigure::Girths, TapeFigure::Back, TapeFigure::Front,
                                            TapeFigure::Side, TapeFigure::Arm};

/// "Girths", "Back", "Front", "Side" or "Shoulder and arm".
std::string_view figure_title(TapeFigure figure);
/// The one figure that shows the measurement.
TapeFigure figure_of(MeasurementName name);
/// Its number on the figures and on the form: its place in tape_order(), counted from 1.
int tape_number(MeasurementName name);
/// The measurements of a figure by their numbers.
std::vector<MeasurementName> tapes_on(TapeFigure figure);

/// What a line of a figure is.
enum class FigureInk {
  Body,        ///< the outline
  Detail,      ///< what lies within it: collar bone, breast, the arm's root
  Guide,       ///< a level or a tied tape that a measurement begins or ends at
  Tape,        ///< the tape where it is seen
  HiddenTape,  ///< the tape behind the body
  Held,        ///< a dot, drawn as a small ring: the end held still
  ReadOff,     ///< an arrow head: the end where the tape is read
  Cloth,       ///< a line of the toile
  Seen,        ///< a fault on it
};

struct FigureLine {
  FigureInk ink = FigureInk::Body;
  Path path;
};

/// The number of a tape; `at` is its middle.
struct FigureNumber {
  std::string text;
  Point at;
};

/// How large a figure is drawn.
struct FigureSize {
  double scale = 0.125;  ///< mm for a mm of the body
  double number = 2.8;   ///< height of the numbers (the em), mm
};

/// A figure in mm, origin at its lower left corner, y up. Nothing lies outside it; no line of a
/// tape or a guide runs through a number.
struct FigureDrawing {
  double width = 0.0, height = 0.0;
  std::vector<FigureLine> lines;
  std::vector<FigureNumber> numbers;
};
FigureDrawing drawing_of(TapeFigure figure, const FigureSize& size);

/// Where a figure without tapes has its points, for a picture that names them.
struct BodyPoint {
  std::string_view name;  ///< "side neck point"
  TapeFigure figure;      ///< Front, Back or Side
  Point at;               ///< in the drawing
};
FigureDrawing body_of(TapeFigure figure, const FigureSize& size);
std::vector<BodyPoint> points_of(TapeFigure figure, const FigureSize& size);

/// Room that a number takes about its middle, in mm; widths are those of the built-in font's digits
/// (0.64 em each).
Box room_of(const FigureNumber& number, const FigureSize& size);

}  // namespace blockwright
