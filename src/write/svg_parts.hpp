#pragma once

#include "blockwright/layout/sheet.hpp"

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>

namespace blockwright::writing {

/// A coordinate or length in mm as SVG text, to 0.001 mm: a fortieth of a 600 dpi printer's dot,
/// and a hundredth of what the paper promises.
std::string svg_number(double mm);

/// The `d` attribute of a stroke on a sheet of the given height: y runs downwards from the top.
/// Requires: its path is not empty.
std::string svg_path_data(const Stroke& stroke, double sheet_height);

/// Small letters, digits and single hyphens of a name, at most 40 of them: "Front / armhole" gives
/// "front-armhole". Letters outside ASCII are left out, so the result may be empty.
std::string id_part(std::string_view name);

/// Hands out ids that are valid in XML (NCName) and each used once in the drawing.
class SvgIds {
 public:
  /// The parts joined by hyphens, empty ones left out; a number is added if the id was used before.
  std::string unique(std::initializer_list<std::string_view> parts);

 private:
  std::map<std::string, int, std::less<>> uses_;
};

}  // namespace blockwright::writing
