// Files on disk: private, never through a link, nothing but files, and clear errors.
#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"
#include "open_folder.hpp"
#include "support/each.hpp"
#include "support/folder_contents.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <optional>
#include <sys/resource.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

using namespace blockwright;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

/// What a FileError told; fails where there was none.
template <class Work>
Problem refusal_of(const Work& work) {
  try {
    work();
  } catch (const FileError& error) {
    CHECK_FALSE(error.problem().hint.empty());
    return error.problem();
  }
  FAIL("nothing was refused");
  return {};
}

bool tells(const Problem& problem, const std::string& text) {
  return problem.message.plain().find(text) != std::string::npos;
}

unsigned mode_of(const std::string& path) {
  struct stat info {};
  REQUIRE(::stat(path.c_str(), &info) == 0);
  return info.st_mode & 07777;
}

/// The umask of the test's life.
class Umask {
 public:
  explicit Umask(mode_t mask) : before_(::umask(mask)) {}
  Umask(const Umask&) = delete;
  Umask& operator=(const Umask&) = delete;
  ~Umask() { ::umask(before_); }

 private:
  mode_t before_;
};

/// As few files as this may be open at once, for as long as the test lives: those that are, and
/// `more`.
class OpenFiles {
 public:
  explicit OpenFiles(rlim_t more) {
    REQUIRE(::getrlimit(RLIMIT_NOFILE, &before_) == 0);
    const int lowest = ::open("/dev/null", O_RDONLY | O_CLOEXEC);
    REQUIRE(lowest >= 0);
    ::close(lowest);
    const rlimit few{static_cast<rlim_t>(lowest) + more, before_.rlim_max};
    REQUIRE(::setrlimit(RLIMIT_NOFILE, &few) == 0);
  }
  OpenFiles(const OpenFiles&) = delete;
  OpenFiles& operator=(const OpenFiles&) = delete;
  ~OpenFiles() { ::setrlimit(RLIMIT_NOFILE, &before_); }

 private:
  rlimit before_{};
};

/// A disk that is mounted for reading only, with one folder on it.
class ReadOnlyDisk : public SystemCalls {
 public:
  int make_folder(const std::string& path, unsigned /*mode*/) override {
    const bool has_parent = fs::exists(fs::path(path).parent_path());
    errno = fs::exists(path) ? EEXIST : has_parent ? EROFS : ENOENT;
    return -1;
  }
  int open(int folder, const std::string& name, int flags, unsigned mode) override {
    if ((flags & O_CREAT) == 0) return SystemCalls::open(folder, name, flags, mode);
    errno = EROFS;
    return -1;
  }
};

}  // namespace

TEST_CASE("What is written reads back, and folders are made") {
  const TempFolder folder;
  DiskFiles files;
  const std::string path = folder.path("a/b/pattern.svg"), bytes("zażółć\0\n", 12);
  files.write(path, bytes);
  CHECK(files.read(path) == bytes);
  CHECK(contents_of(folder.path("a/b")).size() == 1);
}

TEST_CASE("An older file is replaced whole and nothing else is left beside it") {
  const TempFolder folder;
  DiskFiles files;
  files.write(folder.path("x.svg"), "old");
  files.write_all({{folder.path("x.svg"), "new"}, {folder.path("y.svg"), ""}});
  CHECK(contents_of(folder.path("")) == Contents{{"x.svg", "new"}, {"y.svg", ""}});
}

TEST_CASE("Files are for owner and group, less the umask and what an older file denied") {
  const TempFolder folder;
  DiskFiles files;
  const std::string path = folder.path("out/x.svg");
  {
    const Umask open(0);
    files.write(path, "x");
    CHECK(mode_of(path) == 0640);
    CHECK(mode_of(folder.path("out")) == 0750);
    fs::permissions(path, fs::perms{0666});
    files.write(path, "y");
    CHECK(mode_of(path) == 0640);
    fs::permissions(path, fs::perms{0600});
    files.write(path, "z");
    CHECK(mode_of(path) == 0600);
  }
  const Umask mine(077);
  files.write(folder.path("out/y.svg"), "y");
  CHECK(mode_of(folder.path("out/y.svg")) == 0600);
}

TEST_CASE("What is no file is neither read nor waited for") {
  const TempFolder folder;
  DiskFiles files;
  CHECK(tells(refusal_of([&] { files.read(folder.path("none.json")); }), "No such file"));
  CHECK(tells(refusal_of([&] { files.read(folder.path("")); }), "a folder"));
  const std::string pipe = folder.path("pipe.json");
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  for (const std::string& path : each({pipe, std::string("/dev/zero")})) {
    const Problem problem = refusal_of([&] { files.read(path); });
    CHECK(problem.code == "file.read");
    CHECK(problem.where == path);
    CHECK(tells(problem, "a pipe or a device"));
  }
  fs::create_symlink("round.json", folder.path("round.json"));
  CHECK(tells(refusal_of([&] { files.read(folder.path("round.json")); }), "symbolic link"));
  CHECK(files.list(folder.path(""), ".json", Listing::WithSubfolders).empty());
}

TEST_CASE("A link of an output's name is refused and what it leads to stays as it is") {
  const TempFolder folder;
  DiskFiles files;
  const std::string outside = folder.write("outside", "untouched");
  fs::create_directory(folder.path("out"));
  fs::create_symlink(outside, folder.path("out/link.svg"));
  fs::create_symlink("nowhere", folder.path("out/dangling.svg"));
  fs::create_symlink(folder.path(""), folder.path("out/folder.svg"));
  for (const char* name : each({"out/link.svg", "out/dangling.svg", "out/folder.svg"})) {
    const std::string path = folder.path(name);
    const Problem problem = refusal_of([&] {
      files.write_all({{folder.path("out/first.svg"), "x"}, {path, "y"}});
    });
    CHECK(problem.code == "file.write");
    CHECK(problem.where == path);
    CHECK(tells(problem, "a link has this name"));
    CHECK(fs::is_symlink(path));
  }
  CHECK(files.read(outside) == "untouched");
  CHECK_FALSE(fs::exists(folder.path("nowhere")));
  CHECK_FALSE(fs::exists(folder.path("out/first.svg")));
}

TEST_CASE("A folder that is named may be reached through a link; one that leads nowhere is told") {
  const TempFolder folder;
  DiskFiles files;
  fs::create_directory(folder.path("real"));
  fs::create_directory_symlink("real", folder.path("out"));
  files.write(folder.path("out/x.svg"), "x");
  CHECK(files.read(folder.path("real/x.svg")) == "x");
  fs::create_symlink("nowhere", folder.path("dangling"));
  const Problem problem = refusal_of([&] { files.write(folder.path("dangling/x.svg"), "x"); });
  CHECK(problem.where == folder.path("dangling"));
  CHECK_FALSE(fs::exists(folder.path("nowhere")));
}

TEST_CASE("Whatever else stands in the way of an output is told and left alone") {
  const TempFolder folder;
  DiskFiles files;
  (void)folder.write("plain", "x");
  fs::create_directories(folder.path("taken.svg/inside"));
  REQUIRE(::mkfifo(folder.path("pipe.svg").c_str(), 0600) == 0);
  const Problem below = refusal_of([&] { files.write(folder.path("plain/y.svg"), "y"); });
  CHECK(below.where == folder.path("plain"));
  CHECK(tells(below, "Not a directory"));
  CHECK(tells(refusal_of([&] { files.write(folder.path("taken.svg"), "y"); }), "a folder has"));
  CHECK(tells(refusal_of([&] { files.write(folder.path("pipe.svg"), "y"); }), "a pipe or device"));
  CHECK(std::distance(fs::directory_iterator(folder.path("")), {}) == 3);
}

TEST_CASE("A path that names no file, or holds a NUL, is refused; a name too long is told") {
  const TempFolder folder;
  DiskFiles files;
  for (const char* path : {"", ".", "..", "sub/", "sub/."}) {
    INFO(path);
    CHECK(refusal_of([&] { files.write(folder.path("") + path, "x"); }).code == "file.write");
  }
  CHECK(tells(refusal_of([&] { files.write(folder.path("a") + std::string("\0b", 2), "x"); }),
              "NUL"));
  CHECK(tells(refusal_of([&] { files.read(folder.path("a") + std::string("\0b", 2)); }), "NUL"));
  CHECK(tells(refusal_of([&] { (void)files.lock(folder.path("a") + std::string("\0b", 2)); }),
              "NUL"));
  // 255 bytes is the longest that file systems take; nothing is lost of them to names beside.
  files.write(folder.path(std::string(255, 'a')), "x");
  files.write(folder.path(std::string(255, 'a')), "y");
  CHECK(files.read(folder.path(std::string(255, 'a'))) == "y");
  const Problem longer = refusal_of([&] { files.write(folder.path(std::string(256, 'a')), "x"); });
  CHECK(tells(longer, "File name too long"));
  CHECK(longer.hint.plain().find("a shorter name") != std::string::npos);
  CHECK(contents_of(folder.path("")).size() == 1);
}

TEST_CASE("Names of any bytes are written as they are, within their folder") {
  const TempFolder folder;
  DiskFiles files;
  std::vector<NewFile> set;
  Contents expected;
  for (const std::string& name :
       {std::string("a b'\"$"), std::string("line\nbreak"), std::string("-o"), std::string("...x"),
        std::string("\xFF\xFE"), std::string("\xE2\x80\xAE"), std::string("*")}) {
    set.push_back({folder.path(name), name});
    expected[name] = name;
  }
  files.write_all(set);
  files.write_all(set);
  CHECK(contents_of(folder.path("")) == expected);
}

TEST_CASE("A folder's files are listed in order, hidden ones and links to folders apart") {
  const TempFolder folder;
  DiskFiles files;
  for (const char* name : {"b.json", "a.json", ".hidden.json", "c.txt", "sub/d.json"}) {
    files.write(folder.path(name), "x");
  }
  files.write(folder.path(".hidden/e.json"), "x");
  fs::create_directory_symlink(".", folder.path("sub/round"));
  fs::create_symlink("nowhere", folder.path("f.json"));
  const auto named = [&](const std::vector<std::string>& names) {
    std::vector<std::string> paths;
    for (const std::string& name : names) paths.push_back(folder.path(name));
    return paths;
  };
  const std::string top = folder.path("").substr(0, folder.path("").size() - 1);
  CHECK(files.list(top, ".json", Listing::Folder) == named({"a.json", "b.json"}));
  CHECK(files.list(top, ".json", Listing::WithSubfolders) ==
        named({"a.json", "b.json", "sub/d.json"}));
  const Problem problem =
      refusal_of([&] { (void)files.list(folder.path("none"), ".json", Listing::Folder); });
  CHECK(problem.where == folder.path("none"));
}

TEST_CASE("What a listing leaves out is named with its reason, each once") {
  const TempFolder folder;
  DiskFiles files;
  const std::string top = folder.path("people");
  for (const char* name : {"people/a.json", "people/notes.txt", "people/deep/b.json",
                           "people/x.json/inside.json", "elsewhere/c.json"}) {
    files.write(folder.path(name), "x");
  }
  const auto link = [&](const char* to, const std::string& name) {
    fs::create_symlink(to, top + "/" + name);
  };
  link("a.json", "good.json");
  link("nowhere", "broken.json");
  link("nowhere", "broken.txt");
  link("nowhere", ".hidden.json");
  link("loop.json", "loop.json");
  link("../elsewhere", "others");
  link("../elsewhere", "others.json");
  link("/dev/null", "null.json");
  REQUIRE(::mkfifo((top + "/pipe.json").c_str(), 0600) == 0);
  REQUIRE(::mkfifo((top + "/deep/pipe.json").c_str(), 0600) == 0);
  const std::string loop = std::generic_category().message(ELOOP);
  CHECK(files.not_read(top, ".json", Listing::Folder) ==
        std::vector<NotRead>{{top + "/broken.json", "a link that leads nowhere"},
                             {top + "/loop.json", loop},
                             {top + "/null.json", "a link to a device"},
                             {top + "/others.json", "a link to a folder"},
                             {top + "/pipe.json", "a pipe"},
                             {top + "/x.json", "a folder"}});
  CHECK(files.list(top, ".json", Listing::Folder) ==
        std::vector<std::string>{top + "/a.json", top + "/good.json"});
  // With subfolders x.json is looked through, and each folder that is not is named.
  CHECK(files.not_read(top, ".json", Listing::WithSubfolders) ==
        std::vector<NotRead>{{top + "/broken.json", "a link that leads nowhere"},
                             {top + "/deep/pipe.json", "a pipe"},
                             {top + "/loop.json", loop},
                             {top + "/null.json", "a link to a device"},
                             {top + "/others", "a link to a folder"},
                             {top + "/others.json", "a link to a folder"},
                             {top + "/pipe.json", "a pipe"}});
  CHECK(files.list(top, ".json", Listing::WithSubfolders) ==
        std::vector<std::string>{top + "/a.json", top + "/deep/b.json", top + "/good.json",
                                 top + "/x.json/inside.json"});
  CHECK_THROWS_AS(files.not_read(folder.path("none"), ".json", Listing::Folder), FileError);
}

TEST_CASE("A subfolder that may not be opened is named, and stops nobody") {
  if (::geteuid() == 0) return;  // root may open everything
  const TempFolder folder;
  DiskFiles files;
  files.write(folder.path("people/a.json"), "x");
  files.write(folder.path("people/shut/b.json"), "x");
  fs::permissions(folder.path("people/shut"), fs::perms::none);
  const std::string top = folder.path("people");
  CHECK(files.list(top, ".json", Listing::WithSubfolders) ==
        std::vector<std::string>{top + "/a.json"});
  CHECK(files.not_read(top, ".json", Listing::WithSubfolders) ==
        std::vector<NotRead>{{top + "/shut", "a folder that cannot be read: " +
                                                 std::generic_category().message(EACCES)}});
  fs::permissions(folder.path("people/shut"), fs::perms::owner_all);
}

TEST_CASE("Where too much is open to write into a folder, the reason says so") {
  const TempFolder folder;
  const std::string path = folder.path("out/a.svg");
  DiskFiles().write(path, "x");
  for (const rlim_t more : each({rlim_t{0}, rlim_t{1}})) {  // the folder opens, but not its list
    const Problem problem = refusal_of([&] {
      const OpenFiles few(more);
      DiskFiles().write(path, "y");
    });
    CHECK(problem.where == folder.path("out"));
    CHECK(tells(problem, std::generic_category().message(EMFILE)));
    CHECK(problem.hint.plain() ==
          "too much is open at once: end other programs, or do less at a time; older files are as "
          "they were");
  }
  CHECK(DiskFiles().read(path) == "x");
}

TEST_CASE("Of a file no more is read than was asked for, in whatever pieces it comes") {
  const TempFolder folder(memory_folder());
  const std::string path = folder.write("long", std::string(200000, 'x'));
  SystemCalls calls;
  for (const std::size_t most : each(std::vector<std::size_t>{0, 1, 65536, 70000, 131072})) {
    OpenFile file(calls, calls.open(AT_FDCWD, path, O_RDONLY | O_CLOEXEC, 0));
    std::string bytes;
    REQUIRE(file.read(bytes, most));
    CHECK(bytes.size() == most);
  }
}

TEST_CASE("A disk that is read-only is named as such, with the folder and the cure") {
  const TempFolder folder;
  ReadOnlyDisk calls;
  DiskFiles files(calls);
  const auto check_told = [](const Problem& problem, const std::string& where) {
    CHECK(problem.code == "file.write");
    CHECK(problem.where == where);
    CHECK(tells(problem, "Read-only file system"));
    CHECK(problem.hint.plain() ==
          "nothing can be written to this disk: make it writable, or choose another folder with "
          "--out; older files are as they were");
  };
  const auto writing = [&](const std::string& path) {
    return refusal_of([&] { files.write(path, "x"); });
  };
  const auto locking = [&](const std::string& path) {
    return refusal_of([&] { (void)files.lock(path); });
  };
  const std::string top = folder.path("").substr(0, folder.path("").size() - 1);
  check_told(writing(folder.path("x.svg")), folder.path("x.svg"));
  check_told(writing(folder.path("out/x.svg")), folder.path("out"));
  check_told(writing(folder.path("a/b/out/x.svg")), folder.path("a/b/out"));
  check_told(locking(top), top);
  check_told(locking(folder.path("a/b/out")), folder.path("a/b/out"));
}

TEST_CASE("Of a file that has one place no other folder is advised") {
  const TempFolder folder;
  ReadOnlyDisk calls;
  DiskFiles files(calls);
  const Problem problem =
      refusal_of([&] { in_its_place([&] { files.write(folder.path("me.json"), "x"); }); });
  CHECK(problem.where == folder.path("me.json"));
  CHECK(problem.hint.plain() ==
        "nothing can be written to this disk: make it writable; older files are as they were");
}

TEST_CASE("A file of 16 MiB is read, a larger one refused", "[kLargestInput]") {
  const TempFolder folder(memory_folder());
  const std::size_t most = std::size_t{16} * 1024 * 1024;
  (void)folder.write("most", std::string(most, ' '));
  (void)folder.write("more", std::string(most + 1, ' '));
  DiskFiles files;
  CHECK(files.read(folder.path("most")).size() == most);
  CHECK_THROWS_AS(files.read(folder.path("more")), FileError);
}
