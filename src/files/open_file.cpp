#include "open_folder.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

constexpr std::size_t kChunk = 1 << 16;

}  // namespace

OpenFile::OpenFile(OpenFile&& other) noexcept
    : calls_(other.calls_), file_(std::exchange(other.file_, -1)) {}

OpenFile::~OpenFile() {
  const int error = errno;
  (void)close();
  errno = error;
}

bool OpenFile::write(std::string_view bytes) {
  while (!bytes.empty()) {
    const auto n = uninterrupted([&] { return calls_->write(file_, bytes.data(), bytes.size()); });
    if (n == 0) errno = EIO;
    if (n <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

bool OpenFile::read(std::string& bytes, std::size_t most) {
  std::string chunk(std::min(kChunk, most), '\0');
  while (bytes.size() < most) {
    const std::size_t wanted = std::min(chunk.size(), most - bytes.size());
    const auto n = uninterrupted([&] { return calls_->read(file_, chunk.data(), wanted); });
    if (n < 0) return false;
    if (n == 0) break;
    bytes.append(chunk, 0, static_cast<std::size_t>(n));
  }
  return true;
}

void OpenFile::start_flush() { (void)calls_->start_flush(file_); }

bool OpenFile::flush() {
  return uninterrupted([&] { return calls_->flush(file_); }) == 0;
}

bool OpenFile::lock() {
  return uninterrupted([&] { return calls_->lock(file_); }) == 0;
}

bool OpenFile::status(FileStatus& status) {
  return uninterrupted([&] { return calls_->status_of(file_, status); }) == 0;
}

bool OpenFile::close() {
  const int file = std::exchange(file_, -1);
  return file < 0 || calls_->close(file) == 0 || errno == EINTR;
}

}  // namespace blockwright
