#pragma once

#include "support/run_tool.hpp"

#include <filesystem>
#include <map>
#include <string>

namespace blockwright_tests {

/// The files of a folder, by name.
using Contents = std::map<std::string, std::string>;

inline bool is_hidden_name(const std::string& name) { return name.starts_with('.'); }

inline Contents contents_of(const std::string& folder) {
  Contents contents;
  if (!std::filesystem::exists(folder)) return contents;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    contents[entry.path().filename().string()] = read_bytes(entry.path().string());
  }
  return contents;
}

inline Contents without_hidden(Contents contents) {
  std::erase_if(contents, [](const auto& file) { return is_hidden_name(file.first); });
  return contents;
}

}  // namespace blockwright_tests
