#include "blockwright/text/input_line.hpp"

#include <istream>

namespace blockwright {

std::optional<InputLine> next_line(std::istream& in, std::size_t most) {
  constexpr auto end = std::istream::traits_type::eof();
  if (in.peek() == end) return std::nullopt;
  InputLine line;
  char c = 0;
  while (line.text.size() < most && in.get(c)) {
    if (c == '\n') return line;
    line.text += c;
  }
  const auto next = in.peek();
  line.is_whole = next == end || next == '\n';
  if (next == '\n') in.get(c);
  return line;
}

}  // namespace blockwright
