#include "builtin_font.hpp"

#include "blockwright/base/embedded_file.hpp"

namespace blockwright {

// BLOCKWRIGHT_FONT_FILE is set by layer.cmake.
BLOCKWRIGHT_EMBEDDED_FILE(builtin_font, BLOCKWRIGHT_FONT_FILE)

}  // namespace blockwright
