#include "text_placer.hpp"

#include "text_measure.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace blockwright {
namespace {

// Clear paper between a line and the letters beside it, in mm: little if there is room, more where
// the line bends towards them.
constexpr std::array<double, 4> kTextGaps = {1.2, 2.5, 4.0, 6.0};
// From baseline to baseline, in shares of the letters' height.
constexpr double kBlockLineStep = 1.3;
// Places tried along each half of a line, from its middle outwards.
constexpr int kPlaces = 12;
// A line counts as upright if its unit tangent leans by no more than this.
constexpr double kUpright = 1e-6;

// How far along its own direction a text begins before its anchor point.
double lead_of(const SheetText& text, double width) {
  switch (text.anchor) {
    case TextAnchor::Start:
      return 0.0;
    case TextAnchor::Middle:
      return 0.5 * width;
    case TextAnchor::End:
      return width;
  }
  return 0.0;
}

// The direction in which text along a line is read: to the right, or upwards along an upright line.
Vec reading_direction(Vec along) {
  const bool upright = std::abs(along.x) <= kUpright;
  const bool backwards = upright ? along.y < 0.0 : along.x < 0.0;
  return backwards ? -along : along;
}

// A text beside a line at a share of its length, above it or below as it is read.
SheetText beside_line(const Path& line, double share, double gap, bool above,
                      const std::string& text, double height) {
  const double along = share * length(line, 1e-3);
  const Vec reading = reading_direction(tangent_at_length(line, along));
  const double aside = above ? gap + kLettersBelow * height : -(gap + kLettersAbove * height);
  SheetText set;
  set.text = text;
  set.at = point_at_length(line, along) + aside * left_of(reading);
  set.height = height;
  set.anchor = TextAnchor::Middle;
  set.turn = angle_of(reading);
  return set;
}

double width_of(const std::vector<TextPlacer::Line>& lines) {
  double width = 0.0;
  for (const auto& line : lines) width = std::max(width, text_width(line.text, line.height));
  return width;
}

double height_of(const std::vector<TextPlacer::Line>& lines) {
  double height = 0.0;
  for (const auto& line : lines) height += kBlockLineStep * line.height;
  return height;
}

}  // namespace

std::vector<Box> boxes_of(const SheetText& text) {
  const double width = text_width(text.text, text.height);
  const Vec along = direction(text.turn), up = left_of(along);
  const Point start = text.at - lead_of(text, width) * along;
  const int parts = std::max(1, static_cast<int>(std::ceil(width / text.height)));
  std::vector<Box> boxes;
  for (int i = 0; i < parts; ++i) {
    Box box;
    for (const int end : {i, i + 1}) {
      const Point foot = start + (width * end / parts) * along;
      box.include(foot + kLettersAbove * text.height * up);
      box.include(foot - kLettersBelow * text.height * up);
    }
    boxes.push_back(box);
  }
  return boxes;
}

bool TextPlacer::fits(const SheetText& text) const {
  const auto boxes = boxes_of(text);
  return std::all_of(boxes.begin(), boxes.end(),
                     [&](const Box& box) { return space_.is_free(box); });
}

void TextPlacer::set(SheetText text) {
  for (const Box& box : boxes_of(text)) space_.take(box);
  text.piece = piece_;
  sheet_.texts.push_back(std::move(text));
}

bool TextPlacer::beside_at(const Path& line, double gap, const std::string& text, double height) {
  for (int step = 0; step < kPlaces; ++step) {
    const double away = 0.5 * step / kPlaces;
    for (const double share : {0.5 - away, 0.5 + away}) {
      for (const bool above : {true, false}) {
        const SheetText candidate = beside_line(line, share, gap, above, text, height);
        if (!fits(candidate)) continue;
        set(candidate);
        return true;
      }
    }
  }
  return false;
}

bool TextPlacer::beside(const Path& line, const std::string& text, double height) {
  return std::any_of(kTextGaps.begin(), kTextGaps.end(),
                     [&](double gap) { return beside_at(line, gap, text, height); });
}

void TextPlacer::set_beside(const Path& line, double share, const std::string& text,
                            double height) {
  const Vec along = tangent_at_length(line, share * length(line, 1e-3));
  set(beside_line(line, share, kTextGaps.front(), reading_direction(along) == along, text, height));
}

bool TextPlacer::block(const std::vector<Line>& lines, Point wish, double margin) {
  const auto found =
      space_.find(width_of(lines) + 2.0 * margin, height_of(lines) + 2.0 * margin, wish);
  if (!found) return false;
  Point at = {found->left + margin, found->top - margin};
  for (const Line& line : lines) {
    at.y -= kBlockLineStep * line.height;
    const double up = 0.5 * (kBlockLineStep - kLettersAbove - kLettersBelow) + kLettersBelow;
    sheet_.texts.push_back({SheetLayer::Text,
                            piece_,
                            line.text,
                            {at.x, at.y + up * line.height},
                            line.height,
                            TextAnchor::Start,
                            {}});
  }
  space_.take(*found);
  return true;
}

}  // namespace blockwright
