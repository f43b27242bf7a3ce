#include "embedded_docs.hpp"

#include "blockwright/base/embedded_file.hpp"

namespace blockwright::docs {

// BLOCKWRIGHT_DOCS is set by layer.cmake.
BLOCKWRIGHT_EMBEDDED_FILE(problems, BLOCKWRIGHT_DOCS "/problems.md")
BLOCKWRIGHT_EMBEDDED_FILE(client_schema, BLOCKWRIGHT_DOCS "/schema/client.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(pattern_schema, BLOCKWRIGHT_DOCS "/schema/pattern.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(report_schema, BLOCKWRIGHT_DOCS "/schema/report.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(style_schema, BLOCKWRIGHT_DOCS "/schema/style.schema.json")

}  // namespace blockwright::docs
