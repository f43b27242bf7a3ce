#include "progress_bar.hpp"

namespace blockwright {
namespace {

constexpr std::size_t kWidth = 20;
constexpr std::size_t kHundred = 100;
/// ECMA-48: back to the line's start and erase it.
constexpr const char* kClearLine = "\r\033[K";

}  // namespace

std::string progress_text(std::size_t done, std::size_t total, std::size_t failed) {
  const std::size_t share = total == 0 ? kHundred : done * kHundred / total;
  const std::size_t filled = share * kWidth / kHundred;
  const std::string percent = std::to_string(share);
  std::string text = "[" + std::string(filled, '#') + std::string(kWidth - filled, '-') + "] ";
  text += std::string(3 - percent.size(), ' ') + percent + " %  " + std::to_string(done) + " of " +
          std::to_string(total);
  return failed == 0 ? text : text + ", " + std::to_string(failed) + " failed";
}

void ProgressBar::draw(std::size_t done, std::size_t total, std::size_t failed) {
  if (shown_) out_ << kClearLine << progress_text(done, total, failed) << std::flush;
}

void ProgressBar::clear() {
  if (shown_) out_ << kClearLine << std::flush;
}

}  // namespace blockwright
