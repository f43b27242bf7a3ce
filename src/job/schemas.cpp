#include "blockwright/base/embedded_file.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/job/options.hpp"

#include <string>

namespace blockwright {

// BLOCKWRIGHT_DOCS is set by layer.cmake.
BLOCKWRIGHT_EMBEDDED_FILE(client_schema, BLOCKWRIGHT_DOCS "/schema/client.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(pattern_schema, BLOCKWRIGHT_DOCS "/schema/pattern.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(report_schema, BLOCKWRIGHT_DOCS "/schema/report.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(style_schema, BLOCKWRIGHT_DOCS "/schema/style.schema.json")

std::string schema_named(std::string_view name) {
  if (name == "client") return std::string(client_schema());
  if (name == "job") return job_schema();
  if (name == "pattern") return std::string(pattern_schema());
  if (name == "report") return std::string(report_schema());
  if (name == "style") return std::string(style_schema());
  throw UsageError({Severity::Error, "schema.unknown", std::string(name),
                    "there is no schema of that name",
                    "use client, job, pattern, report or style"});
}

}  // namespace blockwright
