#pragma once

#include <string>

namespace blockwright {

/// What the system could not do with a file, as a FileError "file.read": `what` and the reason that
/// `error` (of errno) gives, with its cure.
[[noreturn]] void fail_reading(const std::string& path, const std::string& what, int error);

/// The same as a FileError "file.write". Only while older files are as they were: it says so.
[[noreturn]] void fail_writing(const std::string& path, const std::string& what, int error);

/// A file that is refused before anything is done to it.
[[noreturn]] void refuse_reading(const std::string& path, const std::string& what,
                                 const std::string& cure);
[[noreturn]] void refuse_writing(const std::string& path, const std::string& what,
                                 const std::string& cure);

}  // namespace blockwright
