#pragma once

#include "blockwright/files/system_calls.hpp"

#include <cerrno>
#include <string>
#include <string_view>

namespace blockwright {

/// The result of a call, made again for as long as a signal interrupts it.
template <class Call>
auto uninterrupted(Call&& call) {
  auto result = call();
  while (result < 0 && errno == EINTR) result = call();
  return result;
}

/// A descriptor that is closed when it goes out of scope. What fails says so with errno.
class OpenFile {
 public:
  OpenFile(SystemCalls& calls, int file) : calls_(&calls), file_(file) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  OpenFile(OpenFile&& other) noexcept;
  OpenFile& operator=(OpenFile&& other) = delete;
  /// Leaves errno as it is.
  ~OpenFile();

  [[nodiscard]] bool is_open() const { return file_ >= 0; }
  [[nodiscard]] int descriptor() const { return file_; }

  bool write(std::string_view bytes);
  /// The rest of the file, at most `most` bytes of it.
  bool read(std::string& bytes, std::size_t most);
  /// Bids the disk begin; whether it does is of no matter.
  void start_flush();
  bool flush();
  bool lock();
  bool status(FileStatus& status);
  /// After an interruption the descriptor is gone all the same, and what was flushed is safe.
  bool close();

 private:
  SystemCalls* calls_;
  int file_;
};

}  // namespace blockwright
