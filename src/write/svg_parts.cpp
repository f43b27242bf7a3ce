#include "svg_parts.hpp"

#include "blockwright/base/number_text.hpp"

namespace blockwright::writing {
namespace {

constexpr int kSvgDecimals = 3;
constexpr std::size_t kLongestPart = 40;

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

}  // namespace

std::string svg_number(double mm) { return trimmed(mm, kSvgDecimals); }

std::string svg_path_data(const Stroke& stroke, double sheet_height) {
  std::string text;
  const auto add = [&](char command, std::initializer_list<Point> points) {
    text += command;
    for (const Point p : points) {
      text += svg_number(p.x) + ' ' + svg_number(sheet_height - p.y) + ' ';
    }
  };
  add('M', {stroke.path.start()});
  for (const Curve& curve : stroke.path.curves()) {
    if (const auto* line = std::get_if<Segment>(&curve)) {
      add('L', {line->b});
    } else {
      const auto& cubic = std::get<CubicCurve>(curve);
      add('C', {cubic.p1, cubic.p2, cubic.p3});
    }
  }
  if (stroke.closed) return text + 'Z';
  text.pop_back();
  return text;
}

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

std::string SvgIds::unique(std::initializer_list<std::string_view> parts) {
  std::string id;
  for (const std::string_view part : parts) {
    if (!part.empty()) id.append(id.empty() ? "" : "-").append(part);
  }
  if (id.empty() || !is_letter(id.front())) id.insert(0, "n");
  std::string candidate = id;
  while (uses_.contains(candidate)) candidate = id + '-' + std::to_string(++uses_.find(id)->second);
  uses_.emplace(candidate, 1);
  return candidate;
}

}  // namespace blockwright::writing
