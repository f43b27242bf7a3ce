#include "safe_name.hpp"

#include <algorithm>

namespace blockwright {
namespace {

constexpr std::size_t kLongestStem = 80;

/// A byte of a letter outside ASCII, in UTF-8.
bool is_in_letter(char c) { return static_cast<unsigned char>(c) >= 0x80; }

bool is_letter_start(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

/// At most `most` bytes, without cutting a letter in two.
std::string cut_to(const std::string& text, std::size_t most) {
  if (text.size() <= most) return text;
  std::size_t end = most;
  while (end > 0 && !is_letter_start(text[end])) --end;
  return text.substr(0, end);
}

bool is_plain(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || c == '.' || is_in_letter(c);
}

}  // namespace

std::string safe_stem(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  std::string stem = slash == std::string::npos ? path : path.substr(slash + 1);
  const std::size_t dot = stem.find_last_of('.');
  if (dot != std::string::npos && dot > 0) stem.erase(dot);
  std::replace_if(
      stem.begin(), stem.end(), [](char c) { return !is_plain(c); }, '-');
  stem.erase(0, std::min(stem.find_first_not_of('.'), stem.size()));
  stem = cut_to(stem, kLongestStem);
  const bool empty = stem.find_first_not_of('-') == std::string::npos;
  return empty ? "client" : stem;
}

std::string joined_path(const std::string& folder, const std::string& name) {
  if (folder.empty() || folder == ".") return name;
  return folder.back() == '/' ? folder + name : folder + "/" + name;
}

}  // namespace blockwright
