#pragma once

#include <cstddef>
#include <string_view>

/// Defines `std::string_view name()`: the bytes of a file, which the assembler copies into
/// read-only data; g++ and clang++ on ELF systems agree on these directives. `path` is a literal;
/// the build has to know that the source depends on that file. Requires: no other file is embedded
/// under this name, in any namespace.
// NOLINTNEXTLINE(cppcoreguidelines-macro-usage): the assembler takes nothing but literals
#define BLOCKWRIGHT_EMBEDDED_FILE(name, path)                                                 \
  asm(".pushsection .rodata\n"                                                                \
      ".balign 16\n"                                                                          \
      ".hidden blockwright_" #name                                                            \
      "_begin\n"                                                                              \
      ".globl blockwright_" #name                                                             \
      "_begin\n"                                                                              \
      "blockwright_" #name                                                                    \
      "_begin:\n"                                                                             \
      ".incbin \"" path                                                                       \
      "\"\n"                                                                                  \
      ".hidden blockwright_" #name                                                            \
      "_end\n"                                                                                \
      ".globl blockwright_" #name                                                             \
      "_end\n"                                                                                \
      "blockwright_" #name                                                                    \
      "_end:\n"                                                                               \
      ".byte 0\n"                                                                             \
      ".popsection");                                                                         \
  extern "C" {                                                                                \
  __attribute__((visibility("hidden"))) extern const char blockwright_##name##_begin[];       \
  __attribute__((visibility("hidden"))) extern const char blockwright_##name##_end[];         \
  }                                                                                           \
  std::string_view name() {                                                                   \
    return {blockwright_##name##_begin,                                                       \
            static_cast<std::size_t>(blockwright_##name##_end - blockwright_##name##_begin)}; \
  }
