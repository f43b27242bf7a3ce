#pragma once

#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"
#include "output_kinds.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// A finished file, complete in memory.
struct OutputFile {
  std::string path;
  std::string bytes;
  int pages = 0;  ///< of a PDF
};

/// Whether the job wants anything that is made of it.
bool writes(const DrawingJob& job, OutputOf of);

/// Adds the kinds of output that the job wants and that are made of the sheet, or of the pattern
/// alone, under `stem` with their endings.
void add_outputs(const std::string& stem, OutputOf of, const DrawingJob& job,
                 const Drawing& drawing, std::vector<OutputFile>& outputs);

/// Writes the files as one set and gives their paths in order. A client file that has an output's
/// name is never written over. Throws FileError "file.write".
std::vector<std::string> write_outputs(std::vector<OutputFile> outputs, FileStore& files);

}  // namespace blockwright
