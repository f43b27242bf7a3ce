#include "svg_ids.hpp"

namespace blockwright::writing {
namespace {

constexpr std::size_t kLongestPart = 40;

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

void append(std::string& id, std::string_view part) {
  if (part.empty()) return;
  if (!id.empty()) id += '-';
  id += part;
}

}  // namespace

std::string id_part(std::string_view name) {
  std::string part;
  bool gap = false;
  for (const char c : name) {
    if (!is_letter(c) && !is_digit(c)) {
      gap = true;
      continue;
    }
    if (part.size() >= kLongestPart) break;
    if (gap && !part.empty()) part += '-';
    gap = false;
    part += small(c);
  }
  return part;
}

std::string SvgIds::unique(std::string_view first, std::string_view second,
                           std::string_view third) {
  std::string id;
  append(id, first);
  append(id, second);
  append(id, third);
  if (id.empty() || !is_letter(id.front())) id.insert(0, "n");
  std::string candidate = id;
  while (uses_.contains(candidate)) candidate = id + '-' + std::to_string(++uses_.find(id)->second);
  uses_.emplace(candidate, 1);
  return candidate;
}

}  // namespace blockwright::writing
