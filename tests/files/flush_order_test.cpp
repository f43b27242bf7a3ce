// A set outlasts a power failure only if its bytes are on the disk before its names are.
#include "blockwright/files/file_store.hpp"
#include "support/folder_contents.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fcntl.h>
#include <map>

using namespace blockwright;
using namespace blockwright_tests;

namespace {

/// Makes the calls, and notes those on which the order of a set depends: "write NAME", "flush
/// NAME", "rename TO". The folder's own name is ".".
class RecordingCalls : public SystemCalls {
 public:
  std::vector<std::string> made;
  std::map<std::string, std::string> beside;  ///< of each file put in its place, the name before

  int open(int folder, const std::string& name, int flags, unsigned mode) override {
    const int file = SystemCalls::open(folder, name, flags, mode);
    if (file >= 0) names_[file] = (flags & O_DIRECTORY) != 0 ? "." : name;
    return file;
  }
  std::ptrdiff_t write(int file, const char* from, std::size_t size) override {
    made.push_back("write " + names_[file]);
    return SystemCalls::write(file, from, size);
  }
  int start_flush(int) override { return 0; }
  int flush(int file) override {
    made.push_back("flush " + names_[file]);
    return 0;
  }
  int rename(int folder, const std::string& from, const std::string& to) override {
    made.push_back("rename " + to);
    beside[to] = from;
    return SystemCalls::rename(folder, from, to);
  }
  int unlink(int folder, const std::string& name) override {
    made.push_back("unlink " + name);
    return SystemCalls::unlink(folder, name);
  }

  /// Where a call was made first or last; past the end if it never was.
  [[nodiscard]] std::size_t first(const std::string& call) const {
    return static_cast<std::size_t>(std::ranges::find(made, call) - made.begin());
  }
  [[nodiscard]] std::size_t last(const std::string& call) const {
    const auto it = std::find(made.rbegin(), made.rend(), call);
    return it == made.rend() ? made.size() : static_cast<std::size_t>(made.rend() - it) - 1;
  }

 private:
  std::map<int, std::string> names_;
};

}  // namespace

TEST_CASE("Each file of a set is written, flushed, put in its place; then the folder is flushed") {
  const bool has_older = GENERATE(false, true);
  const TempFolder folder(memory_folder());
  const std::vector<std::string> names = {"a.json", "b.pdf", "c.svg"};
  std::vector<NewFile> set;
  for (const std::string& name : names) {
    if (has_older) (void)folder.write(name, "old");
    set.push_back({folder.path(name), "new " + name});
  }
  RecordingCalls calls;
  DiskFiles(calls).write_all(set);
  const std::size_t placed = calls.last("flush .");
  REQUIRE(placed < calls.made.size());
  for (const std::string& name : names) {
    INFO(name << (has_older ? ", over an older one" : ""));
    const std::string& beside = calls.beside[name];
    CHECK(calls.last("write " + beside) < calls.first("flush " + beside));
    CHECK(calls.first("flush " + beside) < calls.first("rename " + name));
    CHECK(calls.first("rename " + name) < placed);
  }
  // What a later run needs to put older files back is safe before the first name changes, and goes
  // only when all names are safe.
  const auto first_rename = std::ranges::find_if(
      calls.made, [](const std::string& call) { return call.starts_with("rename "); });
  const auto is_removal = [](const std::string& call) { return call.starts_with("unlink "); };
  const auto removal = std::find_if(first_rename, calls.made.end(), is_removal);
  REQUIRE(removal != calls.made.end());
  const std::string list = removal->substr(7);
  CHECK(calls.last("write " + list) < calls.first("flush " + list));
  CHECK(calls.first("flush " + list) < static_cast<std::size_t>(first_rename - calls.made.begin()));
  CHECK(placed < static_cast<std::size_t>(removal - calls.made.begin()));
}
