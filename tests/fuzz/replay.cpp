// Runs a target on every file of the folders named, in the order of their names, or on a file. The
// first folder, the seeds, must hold some; the second, of found cases, may be missing.
#include "must.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> files_of(const fs::path& folder) {
  std::vector<fs::path> files;
  if (fs::is_regular_file(folder)) return {folder};
  if (!fs::is_directory(folder)) return files;
  for (const auto& entry : fs::directory_iterator(folder)) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<char> bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

int main(int count, char** folders) {
  for (int i = 1; i < count; ++i) {
    const std::vector<fs::path> files = files_of(folders[i]);
    if (i == 1 && files.empty()) {
      std::cerr << "no seeds in " << folders[i] << "\n";
      return 1;
    }
    for (const fs::path& file : files) {
      std::cout << file.string() << std::endl;  // flushed: tells the one that ends the program
      const std::vector<char> bytes = bytes_of(file);
      const std::vector<std::uint8_t> input(bytes.begin(), bytes.end());
      LLVMFuzzerTestOneInput(input.data(), input.size());
    }
  }
  return 0;
}
