#pragma once

#include "batch_line.hpp"
#include "blockwright/files/file_store.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// Beside the output of each client that a batch finished lies a small hidden record: of what the
/// output was made, and what was told of it. It is written in one set with the output, so that the
/// two never disagree.
struct DoneRecord {
  std::string client;  ///< path of the client file
  std::string key;     ///< of what it was made
  BatchLine line;
  struct Output {
    std::string name;  ///< in the folder of the record
    std::string hash;
  };
  std::vector<Output> outputs;
};

/// Records are hidden and end so.
inline constexpr std::string_view kRecordEnding = ".blockwright-done";

/// "out/.ondine-marsh-toile.blockwright-done"
std::string record_path(const Job& job);

/// A hash of the contents (XXH3, 128 bits) in hexadecimal digits.
std::string content_hash(std::string_view bytes);

/// What a client's output is made of: version of the program, options, style and client file.
std::string content_key(const Job& job, std::string_view style, std::string_view client);

DoneRecord record_of(const std::string& key, const BatchLine& line,
                     const std::vector<NewFile>& set);
std::string record_text(const DoneRecord& record);
/// Nothing if the text is no record of this version.
std::optional<DoneRecord> read_record(const std::string& text);

}  // namespace blockwright
