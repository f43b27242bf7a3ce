#include "drawings.hpp"

#include "blockwright/base/error.hpp"

#include <algorithm>
#include <sstream>
#include <string_view>
#include <utility>

namespace blockwright {
namespace {

/// What the format of every client file begins with.
constexpr std::string_view kClientFormat = "\"blockwright-client-";

bool is_client_file(const std::string& path, FileStore& files) {
  try {
    return files.read(path).find(kClientFormat) != std::string::npos;
  } catch (const FileError&) {
    return false;  // none, or what write_all() refuses
  }
}

/// Anna's pattern may have the name of a client file: "anna-pattern.json".
void spare_client_files(const std::vector<OutputFile>& outputs, FileStore& files) {
  for (const OutputFile& output : outputs) {
    if (!output.path.ends_with(".json") || !is_client_file(output.path, files)) continue;
    throw FileError({Severity::Error, "file.write", output.path,
                     "a client file has this name, and measurements are not written over",
                     "choose another folder with --out, or rename the client file"});
  }
}

bool is_wanted(const DrawingJob& job, const OutputRow& row) {
  return std::ranges::find(job.write, row.kind) != job.write.end();
}

}  // namespace

bool writes(const DrawingJob& job, OutputOf of) {
  return std::ranges::any_of(
      output_kinds(), [&](const OutputRow& row) { return row.of == of && is_wanted(job, row); });
}

void add_outputs(const std::string& stem, OutputOf of, const DrawingJob& job,
                 const Drawing& drawing, std::vector<OutputFile>& outputs) {
  for (const OutputRow& row : output_kinds()) {
    if (row.of != of || !is_wanted(job, row)) continue;
    std::ostringstream bytes;
    const int pages = row.write(bytes, drawing);
    outputs.push_back({stem + "." + std::string(row.word), std::move(bytes).str(), pages});
  }
}

std::vector<std::string> write_outputs(std::vector<OutputFile> outputs, FileStore& files) {
  spare_client_files(outputs, files);
  std::vector<NewFile> set;
  std::vector<std::string> paths;
  set.reserve(outputs.size());
  paths.reserve(outputs.size());
  for (OutputFile& output : outputs) {
    paths.push_back(output.path);
    set.push_back({std::move(output.path), std::move(output.bytes)});
  }
  files.write_all(set);
  return paths;
}

}  // namespace blockwright
