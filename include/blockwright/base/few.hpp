#pragma once

#include <array>
#include <cstddef>
#include <initializer_list>

namespace blockwright {

/// A list of a few things, kept in place: what is drawn again and again allocates nothing.
/// Requires: never more than `room` of them (checked).
template <class T, std::size_t room>
class Few {
 public:
  Few() = default;
  Few(std::initializer_list<T> items) {
    for (const T& item : items) push_back(item);
  }

  void push_back(const T& item) {
    items_.at(count_) = item;
    ++count_;
  }
  [[nodiscard]] bool empty() const { return count_ == 0; }
  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] const T& operator[](std::size_t i) const { return items_[i]; }
  [[nodiscard]] const T& front() const { return items_.front(); }
  /// Requires: not empty.
  [[nodiscard]] const T& back() const { return items_[count_ - 1]; }
  [[nodiscard]] T* begin() { return items_.data(); }
  [[nodiscard]] T* end() { return items_.data() + count_; }
  [[nodiscard]] const T* begin() const { return items_.data(); }
  [[nodiscard]] const T* end() const { return items_.data() + count_; }

 private:
  std::array<T, room> items_{};
  std::size_t count_ = 0;
};

}  // namespace blockwright
