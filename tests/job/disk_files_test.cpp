// Files on disk: whole or not at all, private, and clear errors.
#include "blockwright/base/error.hpp"
#include "blockwright/job/file_store.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

using namespace blockwright;
namespace fs = std::filesystem;

namespace {

/// A folder of its own for one test.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("blockwright-" + std::to_string(::getpid()))) {
    fs::remove_all(path_);
    fs::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path_); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] long count() const {
    return std::distance(fs::directory_iterator(path_), fs::directory_iterator());
  }

 private:
  fs::path path_;
};

}  // namespace

TEST_CASE("What is written reads back, folders are made, and only owner and group may read") {
  const Folder folder;
  DiskFiles files;
  const std::string path = folder.file("a/b/pattern.svg");
  files.write(path, std::string("zażółć\0\n", 12));
  CHECK(files.read(path) == std::string("zażółć\0\n", 12));
  struct stat info {};
  REQUIRE(::stat(path.c_str(), &info) == 0);
  CHECK((info.st_mode & 0007) == 0);
}

TEST_CASE("An older file is replaced whole and nothing else is left beside it") {
  const Folder folder;
  DiskFiles files;
  files.write(folder.file("x.svg"), "old");
  files.write(folder.file("x.svg"), "new");
  CHECK(files.read(folder.file("x.svg")) == "new");
  CHECK(folder.count() == 1);
}

TEST_CASE("A missing file, a folder in place of a file and a file in place of a folder are told") {
  const Folder folder;
  DiskFiles files;
  CHECK_THROWS_AS(files.read(folder.file("none.json")), FileError);
  CHECK_THROWS_AS(files.read(folder.file("")), FileError);
  files.write(folder.file("plain"), "x");
  CHECK_THROWS_AS(files.write(folder.file("plain/y.svg"), "y"), FileError);
  fs::create_directories(folder.file("taken.svg/inside"));
  CHECK_THROWS_AS(files.write(folder.file("taken.svg"), "y"), FileError);
  CHECK(folder.count() == 2);
}
