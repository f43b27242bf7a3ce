#include "blockwright/layout/sheet.hpp"

#include "blockwright/base/error.hpp"

#include <algorithm>

namespace blockwright {
namespace {

struct RoleRow {
  LineRole role;
  std::string_view name;
  LineStyle style;
};

// Widths and dashes are our own choice. A person cuts along the middle of the cut line, so it is
// the heaviest; every kind of line differs from the others by its dashes, so that a black-and-white
// print can be read.
const RoleRow& row_of(LineRole role) {
  static const std::vector<RoleRow> rows = {
      {LineRole::CutLine, "cut-line", {0.5, {}}},
      {LineRole::StitchLine, "stitch-line", {0.35, {6.0, 2.0}}},
      {LineRole::FoldLine, "fold-line", {0.5, {8.0, 2.0, 1.0, 2.0}}},
      {LineRole::DartLeg, "dart-leg", {0.3, {4.0, 2.0}}},
      {LineRole::BalanceLine, "balance-line", {0.25, {14.0, 2.0, 1.5, 2.0}}},
      {LineRole::Grainline, "grainline", {0.35, {}}},
      {LineRole::Notch, "notch", {0.5, {}}},
      {LineRole::Hole, "hole", {0.35, {}}},
      {LineRole::Band, "band", {0.25, {1.0, 1.0}, 0.4}},
      {LineRole::TestSquare, "test-square", {0.3, {}}},
      {LineRole::Frame, "frame", {0.15, {}}},
      {LineRole::Before, "before", {0.35, {}, 0.55}},
      {LineRole::After, "after", {0.3, {}}},
      {LineRole::AfterDart, "after-dart", {0.25, {3.0, 1.5}}},
      {LineRole::MovedEdge, "moved-edge", {0.8, {}}},
      {LineRole::Level, "level", {0.18, {2.0, 1.2}, 0.3}},
      {LineRole::LevelBefore, "level-before", {0.18, {2.0, 1.2}, 0.6}},
      {LineRole::Arrow, "arrow", {0.35, {}}},
      {LineRole::BodyLine, "body-line", {0.25, {}, 0.45}},
      {LineRole::BodyDetail, "body-detail", {0.18, {}, 0.65}},
      {LineRole::Tape, "tape", {0.4, {}}},
      {LineRole::HiddenTape, "hidden-tape", {0.18, {1.2, 0.8}, 0.3}},
      {LineRole::TapeEnd, "tape-end", {0.45, {}}},
      {LineRole::Cloth, "cloth", {0.2, {}, 0.25}},
      {LineRole::SeenFault, "seen-fault", {0.55, {}}},
  };
  const auto row =
      std::find_if(rows.begin(), rows.end(), [&](const RoleRow& r) { return r.role == role; });
  require(row != rows.end(), "unknown line role");
  return *row;
}

// Common practice for a line that is only compared with; numbers are our own choice.
constexpr double kPreviousGrey = 0.5;
constexpr double kDotOn = 0.8;
constexpr double kDotOff = 1.2;

}  // namespace

std::string_view line_role_name(LineRole role) { return row_of(role).name; }

LineStyle style_of(const Stroke& stroke) {
  const LineStyle& style = row_of(stroke.role).style;
  if (stroke.layer == SheetLayer::Previous) return {style.width, {kDotOn, kDotOff}, kPreviousGrey};
  return style;
}

double share_before(TextAnchor anchor) {
  if (anchor == TextAnchor::Start) return 0.0;
  return anchor == TextAnchor::Middle ? 0.5 : 1.0;
}

}  // namespace blockwright
