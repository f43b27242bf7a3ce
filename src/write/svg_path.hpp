#pragma once

#include "blockwright/layout/sheet.hpp"

#include <string>

namespace blockwright::writing {

/// A coordinate or length in mm as SVG text, to 0.001 mm: a fortieth of a 600 dpi printer's dot,
/// and a hundredth of what the paper promises.
std::string svg_number(double mm);

/// The `d` attribute of a stroke on a sheet of the given height: y runs downwards from the top.
/// Requires: its path is not empty.
std::string svg_path_data(const Stroke& stroke, double sheet_height);

}  // namespace blockwright::writing
