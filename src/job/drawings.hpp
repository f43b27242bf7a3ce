#pragma once

#include "blockwright/files/file_store.hpp"
#include "blockwright/job/job.hpp"
#include "output_kinds.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// What the names of a client's output begin with, folder and all: "out/ondine-marsh",
/// "out/ondine-marsh-pivot", "out/ondine-marsh-side-dart-bodice".
std::string output_stem(const Job& job);

/// The same with the job's cut: "out/ondine-marsh-toile".
std::string cut_stem(const Job& job);

/// Whether the job wants anything that is made of it.
bool writes(const DrawingJob& job, OutputOf of);

/// Adds the kinds of output that the job wants and that are made of the sheet, or of the pattern
/// alone, under `stem` with their endings. Gives back the pages of the PDF.
int add_outputs(const std::string& stem, OutputOf of, const DrawingJob& job, const Drawing& drawing,
                std::vector<NewFile>& outputs);

/// Writes the files as one set and gives their paths in order. A client file that has an output's
/// name is never written over. Throws FileError "file.write".
std::vector<std::string> write_outputs(const std::vector<NewFile>& outputs, FileStore& files);

}  // namespace blockwright
