#include "text_placer.hpp"

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

// The direction in which text along a line is read: to the right, or upwards along an upright line.
Vec reading_direction(Vec along) {
  const bool upright = std::abs(along.x) <= kUpright;
  const bool backwards = upright ? along.y < 0.0 : along.x < 0.0;
  return backwards ? -along : along;
}

enum class SideOfLine { Above, Below };  // as it is read

struct PlaceBeside {
  double share;  // of the line's length
  SideOfLine side;
  double gap;  // mm from the line to the letters
};

SheetText set_beside_line(const Path& line, const PlaceBeside& place, SheetText text) {
  const double along = place.share * length(line, 1e-3);
  const Vec reading = reading_direction(tangent_at_length(line, along));
  const bool above = place.side == SideOfLine::Above;
  const double aside = above ? place.gap + text.room.below : -(place.gap + text.room.above);
  text.at = point_at_length(line, along) + aside * left_of(reading);
  text.anchor = TextAnchor::Middle;
  text.turn = angle_of(reading);
  return text;
}

}  // namespace

std::vector<Box> boxes_of(const SheetText& text) {
  const Vec along = direction(text.turn), up = left_of(along);
  const Point start = text.at - share_before(text.anchor) * text.room.width * along;
  const int parts = std::max(1, static_cast<int>(std::ceil(text.room.width / text.height)));
  std::vector<Box> boxes;
  for (int i = 0; i < parts; ++i) {
    Box box;
    for (const int end : {i, i + 1}) {
      const Point foot = start + (text.room.width * end / parts) * along;
      box.include(foot + text.room.above * up);
      box.include(foot - text.room.below * up);
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
  drawing_.add(std::move(text));
}

bool TextPlacer::beside_at(const Path& line, double gap, SheetText text) {
  for (int step = 0; step < kPlaces; ++step) {
    const double away = 0.5 * step / kPlaces;
    for (const double share : {0.5 - away, 0.5 + away}) {
      for (const SideOfLine side : {SideOfLine::Above, SideOfLine::Below}) {
        text = set_beside_line(line, {share, side, gap}, std::move(text));
        if (!fits(text)) continue;
        set(std::move(text));
        return true;
      }
    }
  }
  return false;
}

bool TextPlacer::beside(const Path& line, const std::string& text, double height) {
  const SheetText measured = drawing_.measured(text, height);
  return std::any_of(kTextGaps.begin(), kTextGaps.end(),
                     [&](double gap) { return beside_at(line, gap, measured); });
}

void TextPlacer::set_beside(const Path& line, double share, const std::string& text,
                            double height) {
  const Vec along = tangent_at_length(line, share * length(line, 1e-3));
  const auto side = reading_direction(along) == along ? SideOfLine::Above : SideOfLine::Below;
  set(set_beside_line(line, {share, side, kTextGaps.front()}, drawing_.measured(text, height)));
}

Vec TextPlacer::size_of(const std::vector<Line>& lines, double margin) const {
  double width = 0.0, height = 0.0;
  for (const Line& line : lines) {
    width = std::max(width, drawing_.fonts().room(line.text, line.height).width);
    height += kBlockLineStep * line.height;
  }
  return {width + 2.0 * margin, height + 2.0 * margin};
}

// Where the least margin has no room, the wished one has none.
bool TextPlacer::block(const std::vector<Line>& lines, Point wish, Margins margins,
                       const FreeSpace& room) {
  const auto close = room.find(size_of(lines, margins.least), wish);
  if (!close) return false;
  const auto wide = margins.wished > margins.least ? room.find(size_of(lines, margins.wished), wish)
                                                   : std::nullopt;
  const Box& found = wide ? *wide : *close;
  const double margin = wide ? margins.wished : margins.least;
  Point at = {found.left + margin, found.top - margin};
  for (const Line& line : lines) {
    SheetText text = drawing_.measured(line.text, line.height);
    at.y -= kBlockLineStep * text.height;
    const double spare = kBlockLineStep * text.height - text.room.above - text.room.below;
    text.at = {at.x, at.y + 0.5 * spare + text.room.below};
    drawing_.add(std::move(text));
  }
  space_.take(found);
  return true;
}

}  // namespace blockwright
