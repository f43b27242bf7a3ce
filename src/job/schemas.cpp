#include "blockwright/base/error.hpp"
#include "blockwright/job/options.hpp"
#include "embedded_docs.hpp"

#include <string>

namespace blockwright {

std::string schema_named(std::string_view name) {
  if (name == "client") return std::string(docs::client_schema());
  if (name == "job") return job_schema();
  if (name == "pattern") return std::string(docs::pattern_schema());
  if (name == "report") return std::string(docs::report_schema());
  if (name == "style") return std::string(docs::style_schema());
  throw UsageError({Severity::Error, "schema.unknown", std::string(name),
                    "there is no schema of that name",
                    "use client, job, pattern, report or style"});
}

}  // namespace blockwright
