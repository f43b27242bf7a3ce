#include "blockwright/base/error.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/layout/print_plan.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

// Portrait sizes in mm. ISO 216 (a4 ... a0) and ANSI/ASME Y14.1 (letter, legal, tabloid: 8.5 x 11,
// 8.5 x 14 and 11 x 17 in), both from memory.
struct NamedPaper {
  std::string_view name;
  Length width;
  Length height;
};
constexpr std::array<NamedPaper, 8> kNamedPapers = {{
    {"a4", Length::mm(210.0), Length::mm(297.0)},
    {"a3", Length::mm(297.0), Length::mm(420.0)},
    {"a2", Length::mm(420.0), Length::mm(594.0)},
    {"a1", Length::mm(594.0), Length::mm(841.0)},
    {"a0", Length::mm(841.0), Length::mm(1189.0)},
    {"letter", Length::inches(8.5), Length::inches(11.0)},
    {"legal", Length::inches(8.5), Length::inches(14.0)},
    {"tabloid", Length::inches(11.0), Length::inches(17.0)},
}};
constexpr std::string_view kRollPrefix = "roll:";
constexpr double kSmallestSide = 100.0;
constexpr double kLargestSide = 5000.0;

std::optional<Length> side_from(std::string_view text) {
  double value = 0.0;
  const auto [end, error] =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  const bool whole = error == std::errc{} && end == text.data() + text.size();
  if (!whole || !std::isfinite(value)) return std::nullopt;
  if (value < kSmallestSide || value > kLargestSide) return std::nullopt;
  return Length::mm(value);
}

}  // namespace

Paper paper_named(std::string_view name) {
  for (const NamedPaper& paper : kNamedPapers) {
    if (paper.name == name) return {std::string(name), paper.width, paper.height};
  }
  if (name.starts_with(kRollPrefix)) {
    const auto width = side_from(name.substr(kRollPrefix.size()));
    if (width) return {std::string(name), *width, Length()};
  }
  if (const auto x = name.find('x'); x != std::string_view::npos) {
    const auto width = side_from(name.substr(0, x)), height = side_from(name.substr(x + 1));
    if (width && height) return {std::string(name), *width, *height};
  }
  throw UsageError({Severity::Error, "paper.unknown", "--paper",
                    "'" + shown(name) + "' is not a paper size",
                    "use a4 a3 a2 a1 a0 letter legal tabloid, roll:WIDTH or WIDTHxHEIGHT in mm, "
                    "each side from 100 to 5000"});
}

}  // namespace blockwright
