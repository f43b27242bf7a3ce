#pragma once

#include "blockwright/files/file_store.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What lies hidden beside a set of files: what they were made of, and what they were. It is
/// written in one set with them, so that the two never disagree.
struct Stamp {
  struct Output {
    std::string name;  ///< in the folder of the stamp
    std::string hash;
  };

  std::string key;  ///< of what the files were made: see stamp_key()
  std::vector<Output> outputs;
  std::string line;  ///< what their maker wants to know of them again: a JSON value
};

/// Stamps are hidden and end so.
inline constexpr std::string_view kStampEnding = ".blockwright-done";

/// "out/.ondine-marsh-toile.blockwright-done" of "out/ondine-marsh-toile".
std::string stamp_path(const std::string& output);

/// A hash of the contents (XXH3, 128 bits) in hexadecimal digits.
std::string content_hash(std::string_view bytes);

/// One key of all that a set of files is made of: another one if a part differs.
std::string stamp_key(const std::vector<std::string_view>& parts);

/// The stamp of files that are about to be written. Requires: `line` is JSON.
Stamp stamp_of(std::string key, const std::vector<NewFile>& set, std::string line);

std::string stamp_text(const Stamp& stamp);
/// Nothing if the text is no stamp of this version.
std::optional<Stamp> read_stamp(const std::string& text);

/// Whether all outputs are still in the folder as they were written.
bool is_still_there(const Stamp& stamp, const std::string& folder, FileStore& files);

/// The text of a file; nothing if it cannot be read.
std::optional<std::string> text_if_there(const std::string& path, FileStore& files);

}  // namespace blockwright
