#include "embedded_docs.hpp"

#include <cstddef>

// The assembler copies a file of docs/ (BLOCKWRIGHT_DOCS, set by layer.cmake) into read-only data,
// as the font is: `name` gives back its text.
// NOLINTNEXTLINE(cppcoreguidelines-macro-usage): the assembler takes nothing but literals
#define EMBEDDED(name, file)                                                                 \
  asm(".pushsection .rodata\n"                                                               \
      ".hidden blockwright_docs_" #name                                                      \
      "_begin\n"                                                                             \
      ".globl blockwright_docs_" #name                                                       \
      "_begin\n"                                                                             \
      "blockwright_docs_" #name                                                              \
      "_begin:\n"                                                                            \
      ".incbin \"" BLOCKWRIGHT_DOCS "/" file                                                 \
      "\"\n"                                                                                 \
      ".hidden blockwright_docs_" #name                                                      \
      "_end\n"                                                                               \
      ".globl blockwright_docs_" #name                                                       \
      "_end\n"                                                                               \
      "blockwright_docs_" #name                                                              \
      "_end:\n"                                                                              \
      ".byte 0\n"                                                                            \
      ".popsection");                                                                        \
  extern "C" {                                                                               \
  __attribute__((visibility("hidden"))) extern const char blockwright_docs_##name##_begin[]; \
  __attribute__((visibility("hidden"))) extern const char blockwright_docs_##name##_end[];   \
  }                                                                                          \
  std::string_view blockwright::docs::name() {                                               \
    return {blockwright_docs_##name##_begin,                                                 \
            static_cast<std::size_t>(blockwright_docs_##name##_end -                         \
                                     blockwright_docs_##name##_begin)};                      \
  }

EMBEDDED(problems, "problems.md")
EMBEDDED(client_schema, "schema/client.schema.json")
EMBEDDED(pattern_schema, "schema/pattern.schema.json")
EMBEDDED(report_schema, "schema/report.schema.json")
EMBEDDED(style_schema, "schema/style.schema.json")
