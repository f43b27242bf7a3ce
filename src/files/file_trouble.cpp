#include "file_trouble.hpp"

#include "blockwright/base/error.hpp"

#include <cerrno>
#include <system_error>

namespace blockwright {
namespace {

std::string reason(int error) { return std::generic_category().message(error); }

[[noreturn]] void throw_file_error(const char* code, const std::string& path,
                                   const std::string& what, const std::string& cure) {
  throw FileError({Severity::Error, code, path, what, cure});
}

const char* cure_of_reading(int error) {
  switch (error) {
    case EACCES:
    case EPERM:
      return "ask for the right to read it";
    case ENOENT:
    case ENOTDIR:
    case ENAMETOOLONG:
      return "check the name and the folder";
    case ELOOP:
      return "the link leads nowhere: name the file itself";
    case EMFILE:
    case ENFILE:
      return "too much is open at once: use fewer --jobs";
    default:
      return "check that it is a file and that its disk is sound";
  }
}

const char* cure_of_writing(int error) {
  switch (error) {
    case ENOSPC:
    case EDQUOT:
      return "free some space there, or choose another disk with --out";
    case EACCES:
    case EPERM:
    case EROFS:
      return "ask for the right to write there, or choose another folder with --out";
    case ENAMETOOLONG:
      return "give the client file a shorter name";
    case ENOTDIR:
    case EEXIST:
      return "a file stands where a folder should be: choose another with --out";
    case EMFILE:
    case ENFILE:
      return "too much is open at once: use fewer --jobs";
    default:
      return "check that the disk is sound, or choose another with --out";
  }
}

}  // namespace

void fail_reading(const std::string& path, const std::string& what, int error) {
  throw_file_error("file.read", path, what + ": " + reason(error), cure_of_reading(error));
}

void fail_writing(const std::string& path, const std::string& what, int error) {
  throw_file_error("file.write", path, what + ": " + reason(error),
                   cure_of_writing(error) + std::string("; older files are as they were"));
}

void refuse_reading(const std::string& path, const std::string& what, const std::string& cure) {
  throw_file_error("file.read", path, what, cure);
}

void refuse_writing(const std::string& path, const std::string& what, const std::string& cure) {
  throw_file_error("file.write", path, what, cure);
}

}  // namespace blockwright
