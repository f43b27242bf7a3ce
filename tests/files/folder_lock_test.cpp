// A folder is held by one run at a time, and whoever holds it finishes what dead runs left there.
#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"
#include "file_set.hpp"
#include "support/folder_contents.hpp"

#include <catch2/catch.hpp>

#include <atomic>
#include <fcntl.h>
#include <filesystem>
#include <sys/file.h>
#include <thread>
#include <unistd.h>

using namespace blockwright;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

/// A lock on a file as another process would have it.
class OtherProcess {
 public:
  explicit OtherProcess(const std::string& path) : file_(::open(path.c_str(), O_RDWR)) {
    REQUIRE(::flock(file_, LOCK_EX | LOCK_NB) == 0);
  }
  OtherProcess(const OtherProcess&) = delete;
  OtherProcess& operator=(const OtherProcess&) = delete;
  ~OtherProcess() { ::close(file_); }

 private:
  int file_;
};

}  // namespace

TEST_CASE("A folder that is held is refused with its name and a cure, and is free afterwards") {
  const TempFolder folder;
  DiskFiles files, others;
  {
    const auto held = files.lock(folder.path("out"));
    for (DiskFiles* store : {&files, &others}) {
      try {
        (void)store->lock(folder.path("out"));
        FAIL("held twice");
      } catch (const FileError& error) {
        CHECK(error.problem().code == "file.busy");
        CHECK(error.problem().where == folder.path("out"));
        CHECK(error.problem().hint.plain().find("--out") != std::string::npos);
      }
    }
    (void)files.lock(folder.path("other"));
    others.write(folder.path("out/x.svg"), "x");  // a single run need not hold it
  }
  (void)others.lock(folder.path("out"));
  CHECK(contents_of(folder.path("out")) == Contents{{"x.svg", "x"}});
}

TEST_CASE("The lock of a process that died holds nobody up") {
  const TempFolder folder;
  DiskFiles files;
  (void)folder.write(".blockwright-lock", "");
  (void)files.lock(folder.path(""));
  CHECK(contents_of(folder.path("")).empty());
}

TEST_CASE("Of many who want a folder at once one has it") {
  const TempFolder folder(memory_folder());
  std::atomic<int> inside{0}, most{0}, times{0};
  const auto work = [&] {
    DiskFiles files;
    for (int i = 0; i < 300; ++i) {
      try {
        const auto held = files.lock(folder.path(""));
        if (++inside > 1) ++most;
        ++times;
        std::this_thread::yield();
        --inside;
      } catch (const FileError&) {
        // another has it
      }
    }
  };
  std::vector<std::thread> threads;
  for (int i = 0; i < 4; ++i) threads.emplace_back(work);
  for (std::thread& thread : threads) thread.join();
  CHECK(most == 0);
  CHECK(times > 0);
  CHECK(contents_of(folder.path("")).empty());
}

TEST_CASE("A lock that is no file is refused, whatever it leads to") {
  const TempFolder folder;
  DiskFiles files;
  fs::create_symlink(folder.write("outside", "x"), folder.path(".blockwright-lock"));
  CHECK_THROWS_AS(files.lock(folder.path("")), FileError);
  fs::remove(folder.path(".blockwright-lock"));
  fs::create_directory(folder.path(".blockwright-lock"));
  CHECK_THROWS_AS(files.lock(folder.path("")), FileError);
  CHECK(read_bytes(folder.path("outside")) == "x");
}

TEST_CASE("What a live process has beside is left alone until it is dead") {
  const TempFolder folder;
  DiskFiles files;
  const std::string stem = set_stem(1, 0);
  (void)folder.write(new_name(stem, 0), "new");
  (void)folder.write("a.svg", "old");
  const std::string list = folder.write(list_name(stem), "");
  {
    const OtherProcess writes(list);
    (void)files.lock(folder.path(""));
    files.write(folder.path("b.svg"), "b");
    CHECK(contents_of(folder.path("")).size() == 4);
  }
  (void)files.lock(folder.path(""));
  CHECK(contents_of(folder.path("")) == Contents{{"a.svg", "old"}, {"b.svg", "b"}});
}

TEST_CASE("Only files beside of our own are removed, and only in this folder") {
  const TempFolder folder;
  DiskFiles files;
  Contents others;
  for (const char* name :
       {".blockwright-notes", ".blockwright-1-0.0.new.bak", ".blockwright-x-0.set", "a.new",
        "blockwright-1-0.set", ".blockwright-1-0.json", "notes.txt"}) {
    others[name] = "mine";
    (void)folder.write(name, "mine");
  }
  fs::create_directory(folder.path("out"));
  (void)folder.write(list_name(set_stem(1, 1)), "");
  (void)folder.write("out/" + new_name(set_stem(2, 0), 0), "");
  (void)files.lock(folder.path("out"));
  CHECK(contents_of(folder.path("out")).empty());
  fs::remove(folder.path("out"));
  CHECK(contents_of(folder.path("")).size() == others.size() + 1);
  (void)files.lock(folder.path(""));
  CHECK(contents_of(folder.path("")) == others);
}

TEST_CASE("A forged list touches nothing outside the folder") {
  const TempFolder folder;
  DiskFiles files;
  const std::string stem = set_stem(1, 0);
  fs::create_directory(folder.path("out"));
  (void)folder.write("victim", "untouched");
  (void)folder.write("out/" + old_name(stem, 0), "evil");
  (void)folder.write("out/" + list_name(stem),
                     set_list_text({{"../victim", true}}) + taken_back_text());
  (void)files.lock(folder.path("out"));
  CHECK(read_bytes(folder.path("victim")) == "untouched");
  CHECK(contents_of(folder.path("out")).empty());
}

TEST_CASE("A set in a row of threads is as whole as one alone") {
  const TempFolder folder(memory_folder());
  DiskFiles files;
  const auto work = [&](int number) {
    for (int i = 0; i < 50; ++i) {
      const std::string stem = folder.path(std::to_string(number) + "-" + std::to_string(i));
      files.write_all({{stem + ".svg", "a"}, {stem + ".pdf", "b"}});
    }
  };
  std::vector<std::thread> threads;
  for (int i = 0; i < 4; ++i) threads.emplace_back(work, i);
  for (std::thread& thread : threads) thread.join();
  const Contents contents = contents_of(folder.path(""));
  CHECK(contents.size() == 400);
  CHECK(without_hidden(contents) == contents);
}
