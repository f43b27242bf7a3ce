#include "blockwright/base/text_place.hpp"

#include <algorithm>

namespace blockwright {
namespace {

bool begins_a_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

}  // namespace

std::string line_and_column(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, std::min(at, text.size()));
  const std::string_view in_line = before.substr(before.rfind('\n') + 1);  // npos + 1 is 0
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto column = 1 + std::count_if(in_line.begin(), in_line.end(), begins_a_character);
  return std::to_string(line) + ":" + std::to_string(column);
}

}  // namespace blockwright
