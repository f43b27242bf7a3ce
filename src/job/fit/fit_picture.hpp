#pragma once

#include "block_pass.hpp"
#include "blockwright/files/file_store.hpp"

#include <string>
#include <vector>

namespace blockwright {

/// The text of a client file, before a run of `fit` and after it.
struct ClientTexts {
  const std::string& before;
  const std::string& after;
};

/// One page in each kind that the job wants, by default an SVG where something is added: what the
/// run changed, or without a change what all corrections do to the block as drafted. `run` is the
/// block of the text after it. Nothing for a run with errors. Throws as paper_named() and
/// change_page().
std::vector<NewFile> fit_pictures(const FitJob& job, const ClientTexts& texts, const BlockRun& run);

/// Writes the changed client file, the text before it beside it, and the pictures: as one set where
/// they lie in one folder, else the pictures first, so that the client file changes last. Nothing
/// is written of a client that did not change. Gives the paths back in order. Throws FileError
/// "file.write".
std::vector<std::string> write_fitting(const FitJob& job, const ClientTexts& texts,
                                       const std::vector<NewFile>& pictures, FileStore& files);

}  // namespace blockwright
