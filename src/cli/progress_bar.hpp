#pragma once

#include <cstddef>
#include <ostream>
#include <string>

namespace blockwright {

/// One line at the foot of a terminal that says how far a batch is. Packaged libraries that draw
/// one are not to be had in Debian 12.
class ProgressBar {
 public:
  /// Draws on `out`, if `shown`; else every call does nothing.
  ProgressBar(std::ostream& out, bool shown) : out_(out), shown_(shown) {}
  ~ProgressBar() { clear(); }

  void draw(std::size_t done, std::size_t total, std::size_t failed);
  /// Takes the line away, so that other text can be printed there.
  void clear();

 private:
  std::ostream& out_;
  bool shown_;
};

/// "[#####---------------]  25 %  10 of 40, 2 failed"
std::string progress_text(std::size_t done, std::size_t total, std::size_t failed);

}  // namespace blockwright
