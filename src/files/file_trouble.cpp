#include "blockwright/base/error.hpp"
#include "open_folder.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <system_error>

namespace blockwright {
namespace {

std::string reason(int error) { return std::generic_category().message(error); }

/// What to do about some errors of errno.
struct Cure {
  std::array<int, 3> errors;
  std::string_view text;
};

constexpr Cure kTooMuchOpen{{EMFILE, ENFILE}, "too much is open at once: use fewer --jobs"};

constexpr std::array<Cure, 4> kReadingCures{{
    {{EACCES, EPERM}, "ask for the right to read it"},
    {{ENOENT, ENOTDIR, ENAMETOOLONG}, "check the name and the folder"},
    {{ELOOP}, "the link leads nowhere: name the file itself"},
    kTooMuchOpen,
}};

constexpr std::array<Cure, 5> kWritingCures{{
    {{ENOSPC, EDQUOT}, "free some space there, or choose another disk with --out"},
    {{EACCES, EPERM, EROFS},
     "ask for the right to write there, or choose another folder with --out"},
    {{ENAMETOOLONG}, "give the client file a shorter name"},
    {{ENOTDIR, EEXIST}, "a file stands where a folder should be: choose another with --out"},
    kTooMuchOpen,
}};

std::string cure_of(int error, std::span<const Cure> cures, std::string_view otherwise) {
  for (const Cure& cure : cures) {
    if (std::ranges::find(cure.errors, error) != cure.errors.end()) return std::string(cure.text);
  }
  return std::string(otherwise);
}

}  // namespace

void fail_reading(const std::string& path, const std::string& what, int error) {
  refuse_reading(
      path, what + ": " + reason(error),
      cure_of(error, kReadingCures, "check that it is a file and that its disk is sound"));
}

void fail_writing(const std::string& path, const std::string& what, int error) {
  refuse_writing(
      path, what + ": " + reason(error),
      cure_of(error, kWritingCures, "check that the disk is sound, or choose another with --out") +
          "; older files are as they were");
}

void refuse_reading(const std::string& path, const std::string& what, const std::string& cure) {
  throw FileError({Severity::Error, "file.read", path, what, cure});
}

void refuse_writing(const std::string& path, const std::string& what, const std::string& cure) {
  throw FileError({Severity::Error, "file.write", path, what, cure});
}

}  // namespace blockwright
