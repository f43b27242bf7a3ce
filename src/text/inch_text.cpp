#include "blockwright/text/inch_text.hpp"

#include "blockwright/base/length.hpp"
#include "blockwright/base/number_text.hpp"

#include <fmt/format.h>

#include <bit>

namespace blockwright {
namespace {

constexpr unsigned kFinest = 64;

// Digits alone, at most four.
std::optional<unsigned> whole_of(std::string_view text) {
  return text.size() <= 4 ? number_in<unsigned>(text) : std::nullopt;
}

std::optional<double> fraction_of(std::string_view text) {
  const std::size_t stroke = text.find('/');
  if (stroke == std::string_view::npos) return std::nullopt;
  const auto top = whole_of(text.substr(0, stroke));
  const auto bottom = whole_of(text.substr(stroke + 1));
  if (!top || !bottom) return std::nullopt;
  if (!std::has_single_bit(*bottom) || *bottom > kFinest || *top >= *bottom) return std::nullopt;
  return static_cast<double>(*top) / *bottom;
}

std::optional<double> unsigned_inches_of(std::string_view text) {
  if (const auto whole = whole_of(text)) return *whole;
  if (const auto fraction = fraction_of(text)) return fraction;
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos) return std::nullopt;
  const auto whole = whole_of(text.substr(0, space));
  const auto fraction = fraction_of(text.substr(space + 1));
  if (!whole || !fraction) return std::nullopt;
  return *whole + *fraction;
}

}  // namespace

std::optional<double> inches_of(std::string_view text) {
  const bool negative = text.starts_with('-');
  const auto inches = unsigned_inches_of(text.substr(negative ? 1 : 0));
  if (!inches) return std::nullopt;
  return negative ? -*inches : *inches;
}

std::string fraction_in_cm(std::string_view text) {
  const auto inches = inches_of(text);
  if (!inches || text.find('/') == std::string_view::npos) return {};
  return fmt::format("fractions are for files in inches; in cm it is {}",
                     trimmed(Length::inches(*inches).cm(), 2));
}

}  // namespace blockwright
