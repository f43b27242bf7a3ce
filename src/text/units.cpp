#include "blockwright/text/units.hpp"

#include "blockwright/base/number_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <sstream>
#include <utility>

namespace blockwright {
namespace {

constexpr Length kSixteenth = Length::inches(1.0 / 16.0);
constexpr double kHuge = 1e6;  // mm: nobody means as much, and it may be no number at all

// Half millimetres that somebody gave are shown as they are; what was drawn as a tape shows it, or
// closer where that would hide a tenth of it.
std::string cm_text(Length length) {
  constexpr double exactly = 1e-6, small = 5.0;  // mm
  const double mm = std::abs(length.mm());
  const bool is_given = std::abs(2.0 * mm - std::round(2.0 * mm)) <= 2.0 * exactly;
  return told_number(length.cm(), is_given || mm < small ? 2 : 1) + " cm";
}

std::string metric_text(Length length) {
  const double mm = std::abs(length.mm());
  if (mm >= 10.0) return cm_text(length);
  return told_number(length.mm(), mm < 1.0 ? 2 : 1) + " mm";
}

// One unit in a sentence, where rounding to 0.01 cm takes no more than a tenth of the length. Ours.
constexpr double kAsOthersFrom = 0.5;  // mm

bool is_in_cm(const Wording::Part& part) {
  const auto* length = std::get_if<Length>(&part);
  return length && std::abs(length->mm()) >= 10.0 && std::isfinite(length->mm());
}

std::string inch_text(Length length) {
  const bool on_a_tape = length == Length() || std::abs(length / kSixteenth) >= 1.0;
  const bool plain = on_a_tape && std::abs(length.mm()) < kHuge;
  return (plain ? inch_fraction(length.inches()) : told_number(length.inches(), 3)) + " in";
}

std::string spaced(std::string_view key) {
  std::string text(key);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

bool has_word(const std::string& text, const std::string& word) {
  return (" " + text + " ").find(" " + word + " ") != std::string::npos;
}

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

std::string_view unit_name(Unit unit) { return unit == Unit::Cm ? "cm" : "in"; }

std::string_view unit_word(Unit unit) { return unit == Unit::Cm ? "cm" : "inches"; }

Length printed_step(Unit unit) { return unit == Unit::Cm ? Length::mm(1.0) : kSixteenth; }

Length as_printed(Length length, Unit unit) {
  const Length step = printed_step(unit);
  return std::round(length / step) * step;
}

std::string number_text(Length length, Unit unit) {
  const Length printed = as_printed(length, unit);
  return unit == Unit::Cm ? fixed(printed.cm(), 1) : inch_fraction(printed.inches());
}

std::string change_text(Length change, Unit unit) {
  const bool less = change < Length();
  return (less ? "-" : "+") + number_text(less ? -change : change, unit);
}

std::string length_text(Length length, Unit unit) {
  if (!std::isfinite(length.mm())) return told_number(length.mm(), 0);
  return unit == Unit::Cm ? metric_text(length) : inch_text(length);
}

std::string angle_text(Angle angle, int decimals) { return fixed(angle.degrees(), decimals) + "°"; }

namespace {

bool has_cm(const Wording& wording) { return std::ranges::any_of(wording.parts(), is_in_cm); }

std::string worded_all(const Wording& wording, Unit unit, bool in_cm) {
  std::string text;
  for (const Wording::Part& part : wording.parts()) {
    const auto* length = std::get_if<Length>(&part);
    const bool as_others = length && in_cm && std::abs(length->mm()) >= kAsOthersFrom;
    text += as_others ? cm_text(*length)
            : length  ? length_text(*length, unit)
                      : std::get<std::string>(part);
  }
  return text;
}

}  // namespace

std::string worded(const Wording& wording, Unit unit) {
  return worded_all(wording, unit, unit == Unit::Cm && has_cm(wording));
}

Problem worded(Problem problem, Unit unit) {
  const bool in_cm = unit == Unit::Cm && (has_cm(problem.message) || has_cm(problem.hint));
  problem.message = worded_all(problem.message, unit, in_cm);
  problem.hint = worded_all(problem.hint, unit, in_cm);
  return problem;
}

Problems worded(Problems problems, Unit unit) {
  for (Problem& problem : problems) problem = worded(std::move(problem), unit);
  return problems;
}

std::string name_text(std::string_view name) {
  const std::size_t dot = name.find('.');
  if (dot == std::string_view::npos) return spaced(name);
  const std::string rest = spaced(name.substr(dot + 1));
  std::istringstream piece(spaced(name.substr(0, dot)));
  std::string text;
  for (std::string word; piece >> word;) {
    const bool said_again = (word == "front" || word == "back") && has_word(rest, word);
    if (!said_again) text += word + " ";
  }
  return text + rest;
}

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
