#include "builtin_font.hpp"

#include <cstddef>

// The assembler copies the font file (BLOCKWRIGHT_FONT_FILE, set by layer.cmake) into read-only
// data; g++ and clang++ on ELF systems agree on these directives.
asm(R"(
    .pushsection .rodata
    .balign 16
    .hidden blockwright_font_begin
    .globl blockwright_font_begin
blockwright_font_begin:
    .incbin ")" BLOCKWRIGHT_FONT_FILE R"("
    .hidden blockwright_font_end
    .globl blockwright_font_end
blockwright_font_end:
    .byte 0
    .popsection
)");

extern "C" {
__attribute__((visibility("hidden"))) extern const char blockwright_font_begin[];
__attribute__((visibility("hidden"))) extern const char blockwright_font_end[];
}

namespace blockwright::writing {

std::string_view builtin_font() {
  return {blockwright_font_begin,
          static_cast<std::size_t>(blockwright_font_end - blockwright_font_begin)};
}

}  // namespace blockwright::writing
