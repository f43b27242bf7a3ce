#pragma once

#include "blockwright/files/file_store.hpp"
#include "blockwright/layout/print_plan.hpp"
#include "wishes.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A finished file, complete in memory.
struct OutputFile {
  std::string path;
  std::string bytes;
  int pages = 0;  ///< of a PDF
};

/// Adds the layout as the SVG and PDF that are wished for, under `stem` with their endings.
void add_drawings(const std::string& stem, const Wishes& wishes, const std::string& title,
                  const Layout& layout, std::vector<OutputFile>& outputs);

/// Writes the files as one set and gives their paths in order. A client file that has an output's
/// name is never written over. Throws FileError "file.write".
std::vector<std::string> write_outputs(std::vector<OutputFile> outputs, FileStore& files);

}  // namespace blockwright
