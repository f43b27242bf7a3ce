#include "builtin_font.hpp"

#include <cstddef>

// The assembler copies the font file (BLOCKWRIGHT_FONT_FILE, set by layer.cmake) into read-only
// data; g++ and clang++ on ELF systems agree on these directives.
asm(R"(
    .pushsection .rodata
    .balign 16
    .hidden kBlockwrightFontBegin
    .globl kBlockwrightFontBegin
kBlockwrightFontBegin:
    .incbin ")" BLOCKWRIGHT_FONT_FILE R"("
    .hidden kBlockwrightFontEnd
    .globl kBlockwrightFontEnd
kBlockwrightFontEnd:
    .byte 0
    .popsection
)");

extern "C" {
__attribute__((visibility("hidden"))) extern const char kBlockwrightFontBegin[];
__attribute__((visibility("hidden"))) extern const char kBlockwrightFontEnd[];
}

namespace blockwright {

std::string_view builtin_font() {
  return {kBlockwrightFontBegin,
          static_cast<std::size_t>(kBlockwrightFontEnd - kBlockwrightFontBegin)};
}

}  // namespace blockwright
