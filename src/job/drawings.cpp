#include "drawings.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/write/writers.hpp"

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

bool on_one_page(const Paper& paper) { return paper.is_roll() || paper.name == "a0"; }

}  // namespace

void add_drawings(const std::string& stem, const Wishes& wishes, const std::string& title,
                  const Layout& layout, std::vector<OutputFile>& outputs) {
  TextFonts fonts;
  if (wishes.svg) {
    std::ostringstream svg;
    write_svg(svg, sheet_of(layout, fonts), title, fonts);
    outputs.push_back({stem + ".svg", std::move(svg).str(), 0});
  }
  if (wishes.pdf) {
    PrintPlan plan =
        on_one_page(layout.options.paper) ? one_page(layout, fonts) : tile(layout, fonts);
    plan.title = title;
    std::ostringstream pdf;
    write_pdf(pdf, plan, fonts);
    outputs.push_back({stem + ".pdf", std::move(pdf).str(), static_cast<int>(plan.pages.size())});
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
