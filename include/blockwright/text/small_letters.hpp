#pragma once

#include <string>
#include <string_view>

namespace blockwright {

/// A-Z as a-z; any other letter stays as it is, whatever the locale.
constexpr char small_letter(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// A text that was typed in whatever case.
inline std::string in_small_letters(std::string_view typed) {
  std::string small(typed);
  for (char& c : small) c = small_letter(c);
  return small;
}

}  // namespace blockwright
