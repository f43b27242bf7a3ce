#pragma once

#include <string>
#include <string_view>

namespace blockwright {

/// One of several parts of a folder, counted from 1. A file belongs to a part by its name alone, so
/// that files which come or go move no other.
struct Shard {
  int part = 1;
  int of = 1;

  /// `name`: of the file, as seen from the folder.
  [[nodiscard]] bool holds(std::string_view name) const;
};

/// "2/8"; nothing is the whole folder. Throws UsageError "job.value".
Shard shard_named(const std::string& words);

/// "deep/ondine.json" of "people/deep/ondine.json" in the folder "people".
std::string_view below(std::string_view folder, std::string_view path);

}  // namespace blockwright
