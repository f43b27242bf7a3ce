#pragma once

#include "blockwright/text/text_fonts.hpp"
#include "drawing.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// The text, or as many of its first letters as fit `room` mm followed by an ellipsis, at the given
/// em height. A room too small for one letter gives the ellipsis alone.
std::string shortened(TextFonts& fonts, std::string_view text, double height, double room);

/// The text broken between words into lines no wider than `room` mm; words that are wider than a
/// line are broken inside. No text gives no lines.
std::vector<std::string> wrapped(TextFonts& fonts, std::string_view text, double height,
                                 double room);

/// A paragraph of running text.
struct Paragraph {
  std::string text;
  double height = 3.2;   ///< of the letters, mm
  double before = 0.0;   ///< clear paper above it, mm
  bool heading = false;  ///< stays together with what follows
};

/// Clear paper between columns of text, in mm.
inline constexpr double kGutter = 8.0;
/// A column of text narrower or shorter than this is not worth having, in mm.
inline constexpr double kNarrowestColumn = 55.0;
inline constexpr double kShortestColumn = 15.0;

/// The frame cut into equal columns side by side: as many as are wide enough, at most `most`. A
/// frame that is too small for one column gives none.
std::vector<Box> columns_in(const Box& frame, std::size_t most);

/// Whether a paragraph may go on in the next frame, or waits for it as a whole.
enum class Paragraphs { GoOn, StayWhole };

/// Text that runs from frame to frame, wrapped to each frame's width.
class TextFlow {
 public:
  /// `scale` multiplies all heights.
  TextFlow(std::vector<Paragraph> paragraphs, double scale, Paragraphs kept = Paragraphs::GoOn);

  [[nodiscard]] bool done() const { return next_ == paragraphs_.size(); }
  /// Sets as much of what is left as fits, from the top; what does not fit waits for the next
  /// frame. Where paragraphs go on a frame of full height always takes at least one line. Returns
  /// the height used.
  double pour(TextDrawing& drawing, const Box& frame);
  /// How many paragraphs, whole or in part, are still to be set.
  [[nodiscard]] std::size_t left() const { return paragraphs_.size() - next_; }

 private:
  [[nodiscard]] bool fits_here(double room, const std::vector<std::string>& lines,
                               double width) const;

  std::vector<Paragraph> paragraphs_;
  Paragraphs kept_;
  std::size_t next_ = 0;
};

}  // namespace blockwright
