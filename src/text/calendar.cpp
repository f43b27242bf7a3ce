#include "calendar.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>

namespace blockwright {
namespace {

constexpr int kFirstYear = 1900;
constexpr int kLastYear = 2199;
constexpr std::string_view kForm = "0000-00-00";

bool has_form(std::string_view text) {
  return std::ranges::equal(
      text, kForm, [](char c, char form) { return form == '-' ? c == '-' : c >= '0' && c <= '9'; });
}

// Requires: digits only.
int number_of(std::string_view digits) {
  int value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

}  // namespace

bool is_date(std::string_view text) {
  if (!has_form(text)) return false;
  const int year = number_of(text.substr(0, 4));
  const auto month = static_cast<unsigned>(number_of(text.substr(5, 2)));
  const auto day = static_cast<unsigned>(number_of(text.substr(8, 2)));
  const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(day)};
  return date.ok() && year >= kFirstYear && year <= kLastYear;
}

}  // namespace blockwright
