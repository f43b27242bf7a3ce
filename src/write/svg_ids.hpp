#pragma once

#include <map>
#include <string>
#include <string_view>

namespace blockwright::writing {

/// Small letters, digits and single hyphens of a name, at most 40 of them: "Front / armhole" gives
/// "front-armhole". Letters outside ASCII are left out, so the result may be empty.
std::string id_part(std::string_view name);

/// Hands out ids that are valid in XML (NCName) and each used once in the drawing.
class SvgIds {
 public:
  /// The parts joined by hyphens, empty ones left out; a number is added if the id was used before.
  std::string unique(std::string_view first, std::string_view second = {},
                     std::string_view third = {});

 private:
  std::map<std::string, int, std::less<>> uses_;
};

}  // namespace blockwright::writing
