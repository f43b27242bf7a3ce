#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/text/small_letters.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace blockwright {
namespace {

struct AmountUnitName {
  std::string_view name;
  AmountUnit unit;
};
constexpr std::array<AmountUnitName, 15> kAmountUnitNames{{{"cm", AmountUnit::Cm},
                                                           {"centimetre", AmountUnit::Cm},
                                                           {"centimetres", AmountUnit::Cm},
                                                           {"centimeter", AmountUnit::Cm},
                                                           {"centimeters", AmountUnit::Cm},
                                                           {"mm", AmountUnit::Mm},
                                                           {"millimetre", AmountUnit::Mm},
                                                           {"millimetres", AmountUnit::Mm},
                                                           {"millimeter", AmountUnit::Mm},
                                                           {"millimeters", AmountUnit::Mm},
                                                           {"in", AmountUnit::Inch},
                                                           {"inch", AmountUnit::Inch},
                                                           {"inches", AmountUnit::Inch},
                                                           {"\"", AmountUnit::Inch},
                                                           {"″", AmountUnit::Inch}}};

struct SignOfFraction {
  std::string_view sign, digits;
};
constexpr std::array<SignOfFraction, 7> kSigns{{{"¼", " 1/4"},
                                                {"½", " 1/2"},
                                                {"¾", " 3/4"},
                                                {"⅛", " 1/8"},
                                                {"⅜", " 3/8"},
                                                {"⅝", " 5/8"},
                                                {"⅞", " 7/8"}}};

std::string_view trimmed_text(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t\r");
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(" \t\r") - begin + 1);
}

/// Of "1.5 cm" the unit; what is before it stays.
std::optional<AmountUnit> take_unit(std::string_view& text) {
  const std::string small = in_small_letters(text);
  const AmountUnitName* longest = nullptr;
  for (const AmountUnitName& name : kAmountUnitNames) {
    if (!small.ends_with(name.name)) continue;
    if (longest == nullptr || name.name.size() > longest->name.size()) longest = &name;
  }
  if (longest == nullptr) return std::nullopt;
  text = trimmed_text(text.substr(0, text.size() - longest->name.size()));
  return longest->unit;
}

/// "1,5" as "1.5", "1½" and "1-1/2" as "1 1/2".
std::string plain_amount(std::string_view typed) {
  std::string plain(typed);
  std::ranges::replace(plain, ',', '.');
  for (const auto& [sign, digits] : kSigns) {
    const std::size_t at = plain.find(sign);
    if (at != std::string::npos) plain.replace(at, sign.size(), digits);
  }
  const std::size_t dash = plain.find('-', 1);
  if (dash != std::string::npos && plain.find('/') != std::string::npos) plain[dash] = ' ';
  if (plain.starts_with('.')) plain.insert(plain.begin(), '0');
  return std::string(trimmed_text(plain));
}

bool is_plain_number(const std::string& text) {
  const auto number = number_in<double>(text);
  return text.find_first_not_of("0123456789.-") == std::string::npos && number &&
         std::isfinite(*number) && !text.ends_with('.');
}

}  // namespace

std::string_view amount_unit_word(AmountUnit unit) {
  constexpr std::array<std::string_view, 3> words{"cm", "mm", "in"};
  return words[static_cast<std::size_t>(unit)];
}

Length TypedAmount::length(Unit otherwise) const {
  const auto fraction = inches_of(number);
  const double value = fraction ? *fraction : number_in<double>(number).value_or(0.0);
  const AmountUnit own = otherwise == Unit::Cm ? AmountUnit::Cm : AmountUnit::Inch;
  switch (unit.value_or(own)) {
    case AmountUnit::Cm:
      return Length::cm(value);
    case AmountUnit::Mm:
      return Length::mm(value);
    case AmountUnit::Inch:
      return Length::inches(value);
  }
  return {};
}

std::optional<TypedAmount> amount_typed(std::string_view text) {
  text = trimmed_text(text);
  TypedAmount amount;
  amount.unit = take_unit(text);
  amount.number = plain_amount(text);
  const bool is_one =
      amount.is_fraction() ? inches_of(amount.number).has_value() : is_plain_number(amount.number);
  return is_one ? std::optional(amount) : std::nullopt;
}

std::string amount_for_file(const TypedAmount& amount, Unit file) {
  const AmountUnit own = file == Unit::Cm ? AmountUnit::Cm : AmountUnit::Inch;
  if (!amount.unit && amount.is_fraction() && file == Unit::Cm) return {};
  const bool as_file = !amount.unit || *amount.unit == own;
  const bool odd_fraction = amount.is_fraction() && own == AmountUnit::Cm;
  if (as_file && !odd_fraction) return amount.number;
  return amount.number + " " + std::string(amount_unit_word(amount.unit.value_or(own)));
}

}  // namespace blockwright
