#include "blockwright/layout/sheet.hpp"

#include "blockwright/base/error.hpp"

namespace blockwright {

std::string_view sheet_layer_name(SheetLayer layer) {
  switch (layer) {
    case SheetLayer::Cut:
      return "cut line";
    case SheetLayer::Stitch:
      return "stitch line";
    case SheetLayer::Marks:
      return "marks and grain";
    case SheetLayer::Text:
      return "text";
    case SheetLayer::Previous:
      return "previous version";
  }
  require(false, "unknown sheet layer");
  return {};
}

std::string_view line_role_name(LineRole role) {
  switch (role) {
    case LineRole::CutLine:
      return "cut-line";
    case LineRole::StitchLine:
      return "stitch-line";
    case LineRole::FoldLine:
      return "fold-line";
    case LineRole::DartLeg:
      return "dart-leg";
    case LineRole::BalanceLine:
      return "balance-line";
    case LineRole::Grainline:
      return "grainline";
    case LineRole::Notch:
      return "notch";
    case LineRole::Hole:
      return "hole";
    case LineRole::TestSquare:
      return "test-square";
    case LineRole::Frame:
      return "frame";
  }
  require(false, "unknown line role");
  return {};
}

// Widths and dashes are our own choice. A person cuts along the middle of the cut line, so it is
// the heaviest; every kind of line differs from the others by its dashes, so that a black-and-white
// print can be read.
LineStyle style_of(LineRole role) {
  switch (role) {
    case LineRole::CutLine:
      return {0.5, {}};
    case LineRole::StitchLine:
      return {0.35, {6.0, 2.0}};
    case LineRole::FoldLine:
      return {0.5, {8.0, 2.0, 1.0, 2.0}};
    case LineRole::DartLeg:
      return {0.3, {4.0, 2.0}};
    case LineRole::BalanceLine:
      return {0.25, {14.0, 2.0, 1.5, 2.0}};
    case LineRole::Grainline:
      return {0.35, {}};
    case LineRole::Notch:
      return {0.5, {}};
    case LineRole::Hole:
      return {0.35, {}};
    case LineRole::TestSquare:
      return {0.3, {}};
    case LineRole::Frame:
      return {0.15, {}};
  }
  require(false, "unknown line role");
  return {};
}

}  // namespace blockwright
