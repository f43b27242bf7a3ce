#include "blockwright/base/error.hpp"
#include "blockwright/files/file_store.hpp"
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
  bool elsewhere = false;  ///< or in another folder
};

constexpr Cure kTooMuchOpen{{EMFILE, ENFILE},
                            "too much is open at once: end other programs, or do less at a time"};

constexpr std::array<Cure, 4> kReadingCures{{
    {{EACCES, EPERM}, "ask for the right to read it"},
    {{ENOENT, ENOTDIR, ENAMETOOLONG}, "check the name and the folder"},
    {{ELOOP}, "the link leads nowhere: name the file itself"},
    kTooMuchOpen,
}};
constexpr Cure kReadingCure{{}, "check that it is a file and that its disk is sound"};

constexpr std::array<Cure, 6> kWritingCures{{
    {{ENOSPC, EDQUOT}, "free some space there", true},
    {{EACCES, EPERM}, "ask for the right to write there", true},
    {{EROFS}, "nothing can be written to this disk: make it writable", true},
    {{ENAMETOOLONG}, "give the client file a shorter name"},
    {{ENOTDIR, EEXIST}, "a file stands where a folder should be: move it away", true},
    kTooMuchOpen,
}};
constexpr Cure kWritingCure{{}, "check that the disk is sound", true};

std::string cure_of(int error, std::span<const Cure> cures, const Cure& otherwise) {
  const auto known = std::ranges::find_if(cures, [error](const Cure& cure) {
    return std::ranges::find(cure.errors, error) != cure.errors.end();
  });
  const Cure& cure = known == cures.end() ? otherwise : *known;
  return std::string(cure.text) + (cure.elsewhere ? std::string(kOtherFolder) : "");
}

}  // namespace

void fail_reading(const std::string& path, const std::string& what, int error) {
  refuse_reading(path, what + ": " + reason(error), cure_of(error, kReadingCures, kReadingCure));
}

void fail_writing(const std::string& path, const std::string& what, int error) {
  refuse_writing(path, what + ": " + reason(error),
                 cure_of(error, kWritingCures, kWritingCure) + "; older files are as they were");
}

void refuse_reading(const std::string& path, const std::string& what, const std::string& cure) {
  throw FileError({Severity::Error, "file.read", path, what, cure});
}

void refuse_writing(const std::string& path, const std::string& what, const std::string& cure) {
  throw FileError({Severity::Error, "file.write", path, what, cure});
}

void in_its_place(const std::function<void()>& work) {
  try {
    work();
  } catch (const FileError& error) {
    Problem problem = error.problem();
    std::string hint = problem.hint.plain();
    const std::size_t at = hint.find(kOtherFolder);
    if (at != std::string::npos) hint.erase(at, kOtherFolder.size());
    problem.hint = hint;
    throw FileError(problem);
  }
}

}  // namespace blockwright
