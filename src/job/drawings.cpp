#include "drawings.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/files/safe_name.hpp"

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
void spare_client_files(const std::vector<NewFile>& outputs, FileStore& files) {
  for (const NewFile& output : outputs) {
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

std::string output_stem(const Job& job) {
  const std::string client = job.stem.empty() ? safe_stem(job.client) : job.stem;
  std::string stem = joined_path(job.out, client);
  if (job.command == Command::Pivot) stem += "-pivot";
  if (job.command == Command::Adapt) stem += "-" + safe_stem(job.style);
  return stem;
}

std::string cut_stem(const Job& job, CutStyle cut) {
  return output_stem(job) + "-" + std::string(cut_style_name(cut));
}

CutStyle cut_of(const Job& job, bool finished) {
  const CutStyle cut = job.cut.value_or(finished ? CutStyle::Garment : CutStyle::Toile);
  if (cut != CutStyle::Garment || finished) return cut;
  throw UsageError({Severity::Error, "job.cut", place_of("--cut", job.places),
                    "nothing says how wide the allowances of this garment are",
                    "adapt the block to a style that has the step \"allowance\", or cut a toile, a "
                    "card or net"});
}

bool writes(const DrawingJob& job, OutputOf of) {
  return std::ranges::any_of(
      output_kinds(), [&](const OutputRow& row) { return row.of == of && is_wanted(job, row); });
}

std::vector<Preparation> prepare_writers(const DrawingJob& job) {
  std::vector<Preparation> begun;
  for (const OutputRow& row : output_kinds()) {
    if (row.prepare != nullptr && is_wanted(job, row)) begun.push_back(row.prepare());
  }
  return begun;
}

int add_outputs(const std::string& stem, OutputOf of, const DrawingJob& job,
                const DrawnOutput& drawing, std::vector<NewFile>& outputs) {
  int pages = 0;
  for (const OutputRow& row : output_kinds()) {
    if (row.of != of || !is_wanted(job, row)) continue;
    std::ostringstream bytes;
    pages += row.write(bytes, drawing);
    outputs.push_back({stem + "." + std::string(row.word), std::move(bytes).str()});
  }
  return pages;
}

void add_page(const std::string& stem, const DrawingJob& job, const PrintPlan& plan,
              TextFonts& fonts, std::vector<NewFile>& outputs) {
  for (const OutputRow& row : output_kinds()) {
    if (row.of != OutputOf::Sheet || !is_wanted(job, row)) continue;
    std::ostringstream bytes;
    if (row.kind == OutputKind::Svg) {
      write_svg(bytes, pages_in_one(plan), plan.title, fonts);
    } else {
      write_pdf(bytes, plan, fonts);
    }
    outputs.push_back({stem + "." + std::string(row.word), std::move(bytes).str()});
  }
}

std::vector<std::string> write_outputs(const std::vector<NewFile>& outputs, FileStore& files) {
  spare_client_files(outputs, files);
  files.write_all(outputs);
  std::vector<std::string> paths;
  paths.reserve(outputs.size());
  for (const NewFile& output : outputs) paths.push_back(output.path);
  return paths;
}

}  // namespace blockwright
