#pragma once

#include <cstddef>
#include <iosfwd>
#include <optional>
#include <string>

namespace blockwright {

/// A line that is typed or piped in, without its end.
struct InputLine {
  std::string text;
  bool is_whole = true;  ///< false: it is longer, and what follows comes with the next call
};

/// The next line, of which at most `most` bytes are read, so that one without an end fills no
/// memory. Nothing at the end of the input. Requires: `most` is not 0.
std::optional<InputLine> next_line(std::istream& in, std::size_t most);

}  // namespace blockwright
