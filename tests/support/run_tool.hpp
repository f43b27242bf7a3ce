#pragma once

#include <filesystem>
#include <string>

namespace blockwright_tests {

/// What a command line tool said and how it ended.
struct ToolResult {
  int exit_code = 0;
  std::string output;  ///< standard output and standard error
};

/// Runs a command line in the shell. Throws std::runtime_error if there is no such tool, so that a
/// missing tool fails the test instead of passing it.
ToolResult run_tool(const std::string& command);

/// A folder of its own for the files of one test; removed at the end.
class TempFolder {
 public:
  TempFolder();
  /// In `parent`, which must be there.
  explicit TempFolder(const std::filesystem::path& parent);
  ~TempFolder();
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;

  /// Full path of a file in the folder, without spaces.
  [[nodiscard]] std::string path(const std::string& name) const;
  /// Writes the file and returns its full path.
  [[nodiscard]] std::string write(const std::string& name, const std::string& bytes) const;

 private:
  std::filesystem::path folder_;
};

/// Where files live in memory, so that a test of thousands of writes need not wait for a disk; the
/// usual place for temporary files where there is no such folder.
std::filesystem::path memory_folder();

std::string read_bytes(const std::string& path);

}  // namespace blockwright_tests
