#pragma once

#include "drawings.hpp"

#include <string_view>
#include <type_traits>
#include <vector>

namespace blockwright {

/// One value of an enumeration by the word that people write, and what it means.
template <class Enum>
struct EnumWord {
  Enum value;
  std::string_view word;
  std::string_view means = {};
};

/// All values of an enumeration that an option takes, in order.
template <class Enum>
std::vector<EnumWord<Enum>> enum_words() {
  std::vector<EnumWord<Enum>> words;
  if constexpr (std::is_same_v<Enum, Unit>) {
    words = {{Unit::Cm, "cm"}, {Unit::Inch, "in"}};
  } else if constexpr (std::is_same_v<Enum, ReportKind>) {
    words = {{ReportKind::Text, "text"}, {ReportKind::Json, "json"}};
  } else if constexpr (std::is_same_v<Enum, Alignment>) {
    words = {{Alignment::Still, "still", "what leaves most of the outline where it was"},
             {Alignment::Waist, "waist"},
             {Alignment::Bust, "bust"},
             {Alignment::Neck, "neck"}};
  } else if constexpr (std::is_same_v<Enum, CutStyle>) {
    words = {{CutStyle::Toile, {}, "allowance at shoulder, side and opening; lines to read it by"},
             {CutStyle::Card, {}, "no allowance, holes at the dart points"},
             {CutStyle::Net, {}, "the bare stitch lines"},
             {CutStyle::Garment, {}, "with the allowances of a style's step \"allowance\""}};
    for (auto& row : words) row.word = cut_style_name(row.value);
  } else if constexpr (std::is_same_v<Enum, OutputKind>) {
    for (const OutputRow& row : output_kinds()) words.push_back({row.kind, row.word, row.means});
  } else if constexpr (std::is_same_v<Enum, AmountAs>) {
    for (const AmountWay& way : kAmountWays) words.push_back({way.as, way.word});
  } else {
    static_assert(std::is_same_v<Enum, BodySide>, "say here which words an option takes");
    for (const auto word : kSideWords) words.push_back({*side_named(word), word});
  }
  return words;
}

}  // namespace blockwright
