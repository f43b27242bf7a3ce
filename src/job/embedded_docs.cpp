#include "blockwright/base/embedded_file.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/job/options.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {

// BLOCKWRIGHT_DOCS is set by layer.cmake.
BLOCKWRIGHT_EMBEDDED_FILE(client_schema, BLOCKWRIGHT_DOCS "/schema/client.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(pattern_schema, BLOCKWRIGHT_DOCS "/schema/pattern.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(report_schema, BLOCKWRIGHT_DOCS "/schema/report.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(style_schema, BLOCKWRIGHT_DOCS "/schema/style.schema.json")
BLOCKWRIGHT_EMBEDDED_FILE(problems_page, BLOCKWRIGHT_DOCS "/problems.md")

std::string schema_named(std::string_view name) {
  if (name == "client") return std::string(client_schema());
  if (name == "job") return job_schema();
  if (name == "pattern") return std::string(pattern_schema());
  if (name == "report") return std::string(report_schema());
  if (name == "style") return std::string(style_schema());
  throw UsageError({Severity::Error, "schema.unknown", shown(name),
                    "there is no schema of that name",
                    "use client, job, pattern, report or style"});
}

namespace {

/// One code of docs/problems.md, and the chapter that explains it, perhaps with others.
struct Explanation {
  std::string_view code;
  std::string_view chapter;
};

/// What stands before `end`, which is taken away with it.
std::string_view taken(std::string_view& text, std::string_view end) {
  const std::size_t at = std::min(text.find(end), text.size());
  const std::string_view head = text.substr(0, at);
  text.remove_prefix(std::min(at + end.size(), text.size()));
  return head;
}

/// Of all codes, in the order of the page: "## client.size, job.size" heads a chapter of two.
std::vector<Explanation> explanations() {
  constexpr std::string_view heading = "\n## ";
  std::vector<Explanation> all;
  std::string_view page = problems_page();
  taken(page, heading);
  while (!page.empty()) {
    std::string_view chapter = taken(page, heading);
    std::string_view codes = taken(chapter, "\n");
    while (!codes.empty()) all.push_back({taken(codes, ", "), chapter});
  }
  return all;
}

/// The paragraph that begins with this word in bold, on one line.
std::string paragraph(std::string_view chapter, std::string_view word) {
  taken(chapter, fmt::format("**{}.** ", word));
  std::string text(taken(chapter, "\n\n"));
  while (text.ends_with('\n')) text.pop_back();
  std::ranges::replace(text, '\n', ' ');
  return text;
}

std::string_view family(std::string_view code) { return code.substr(0, code.find('.')); }

/// Codes of the same family, for a code that is not known; all if it has none.
std::string near(std::string_view code) {
  std::vector<std::string_view> same, all;
  for (const Explanation& known : explanations()) {
    all.push_back(known.code);
    if (family(known.code) == family(code)) same.push_back(known.code);
  }
  return fmt::format("{}", fmt::join(same.empty() ? all : same, ", "));
}

}  // namespace

std::string explanation_of(std::string_view code) {
  const std::vector<Explanation> all = explanations();
  const auto found = std::ranges::find(all, code, &Explanation::code);
  if (found == all.end()) {
    throw UsageError({Severity::Error, "explain.unknown", shown(code),
                      "there is no such problem code", "known are: " + near(code)});
  }
  return fmt::format("{}\n  cause: {}\n  cure:  {}\n", code, paragraph(found->chapter, "Cause"),
                     paragraph(found->chapter, "Cure"));
}

}  // namespace blockwright
