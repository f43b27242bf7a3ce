#pragma once

#include "blockwright/files/system_calls.hpp"

#include <algorithm>
#include <cerrno>
#include <string>
#include <vector>

namespace blockwright_tests {

/// How a call goes wrong.
enum class Fault {
  Fails,       ///< nothing is done
  LosesReply,  ///< it is done, and told as failed
  Shortens,    ///< a write or read takes half of what it should; other calls are sound
  Kills,       ///< nothing is done by it or any call after it, as if the process had been killed
};

/// The system's calls, of which one goes wrong. Nothing is really flushed.
class FaultyCalls : public blockwright::SystemCalls {
 public:
  int at = 0;  ///< the call that goes wrong, counted from 1; 0 for none
  Fault fault = Fault::Fails;
  int error = EIO;
  bool has_links = true;  ///< whether the file system can give a file a second name

  /// What went wrong; empty if fewer calls were made.
  [[nodiscard]] const std::string& struck() const { return struck_; }

  int open(int folder, const std::string& name, int flags, unsigned mode) override {
    if (strikes("open")) return failure();
    return SystemCalls::open(folder, name, flags, mode);
  }
  int close(int file) override {
    const int closed = SystemCalls::close(file);  // a killed process's files are closed, too
    return strikes("close") ? failure() : closed;
  }
  std::ptrdiff_t read(int file, char* to, std::size_t size) override {
    const bool struck_now = strikes("read");
    if (struck_now && fault != Fault::Shortens) return failure();
    return SystemCalls::read(file, to, struck_now ? half(size) : size);
  }
  std::ptrdiff_t write(int file, const char* from, std::size_t size) override {
    const bool struck_now = strikes("write");
    if (!struck_now) return SystemCalls::write(file, from, size);
    if (fault == Fault::Fails || fault == Fault::Kills) return failure();
    const std::ptrdiff_t written = SystemCalls::write(file, from, half(size));
    return fault == Fault::Shortens ? written : failure();
  }
  int start_flush(int) override { return strikes("start_flush") ? failure() : 0; }
  int flush(int) override { return strikes("flush") ? failure() : 0; }
  int lock(int file) override {
    return made("lock", [&] { return SystemCalls::lock(file); });
  }
  int status(int folder, const std::string& name, blockwright::FileStatus& status) override {
    return made("status", [&] { return SystemCalls::status(folder, name, status); });
  }
  int status_of(int file, blockwright::FileStatus& status) override {
    return made("status_of", [&] { return SystemCalls::status_of(file, status); });
  }
  int rename(int folder, const std::string& from, const std::string& to) override {
    return made("rename", [&] { return SystemCalls::rename(folder, from, to); });
  }
  int link(int folder, const std::string& from, const std::string& to) override {
    return made("link", [&] {
      if (has_links) return SystemCalls::link(folder, from, to);
      errno = EPERM;
      return -1;
    });
  }
  int unlink(int folder, const std::string& name) override {
    return made("unlink", [&] { return SystemCalls::unlink(folder, name); });
  }
  int make_folder(const std::string& path, unsigned mode) override {
    return made("make_folder", [&] { return SystemCalls::make_folder(path, mode); });
  }
  int names(int folder, std::vector<std::string>& names) override {
    return made("names", [&] { return SystemCalls::names(folder, names); });
  }

 private:
  static std::size_t half(std::size_t size) { return std::max<std::size_t>(1, size / 2); }

  bool strikes(const char* call) {
    ++made_;
    if (at == 0 || made_ < at || (made_ > at && fault != Fault::Kills)) return false;
    if (struck_.empty()) struck_ = call;
    return true;
  }
  int failure() const {
    errno = error;
    return -1;
  }
  template <class Call>
  int made(const char* call, const Call& really) {
    if (!strikes(call) || fault == Fault::Shortens) return really();
    if (fault == Fault::LosesReply) (void)really();
    return failure();
  }

  int made_ = 0;
  std::string struck_;
};

}  // namespace blockwright_tests
