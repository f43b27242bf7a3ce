#pragma once

#include "blockwright/layout/sheet.hpp"

#include <vector>

namespace blockwright::writing {

/// How a stroke is drawn in every format.
struct StrokeLook {
  double width = 0.0;          ///< mm
  std::vector<double> dashes;  ///< mm on, off ...; empty for solid
  double grey = 0.0;           ///< 0 black to 1 white
  bool operator==(const StrokeLook&) const = default;
};

/// The style of the stroke's role. On the layer of the previous version every line is dotted and
/// grey instead, so that nobody cuts along it by mistake.
StrokeLook look_of(const Stroke& stroke);

/// Whether the layer is shown until somebody switches it: all are, but the previous version only on
/// a sheet made to compare with it.
bool shown_at_first(const Sheet& sheet, SheetLayer layer);

/// The layers from the first to the last.
inline constexpr SheetLayer kAllLayers[] = {SheetLayer::Cut, SheetLayer::Stitch, SheetLayer::Marks,
                                            SheetLayer::Text, SheetLayer::Previous};
static_assert(std::size(kAllLayers) == kSheetLayerCount);

}  // namespace blockwright::writing
