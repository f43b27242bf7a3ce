#include "amount_value.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/text/inch_text.hpp"
#include "blockwright/text/json_members.hpp"
#include "blockwright/text/nearest.hpp"
#include "blockwright/text/odd_character.hpp"
#include "blockwright/text/refuse.hpp"
#include "client_keys.hpp"
#include "measure_text.hpp"
#include "slip.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

constexpr MeasurementKind kLength = MeasurementKind::Length;
// An amount this near to the limit is no slip of unit; common practice, no source.
constexpr double kNearAmount = 1.1;

std::string_view number_hint(Unit unit) {
  return unit == Unit::Cm ? "write one number without quotes, with a point: 1.0"
                          : "write a number, 0.5, or a fraction in quotes as on the tape, \"1/2\"";
}

std::string type_hint(const JsonValue& value, Unit unit) {
  std::string hint = unit == Unit::Cm ? fraction_in_cm(value.text) : std::string();
  return hint.empty() ? std::string(number_hint(unit)) : hint;
}

// The number as written, in the file's unit.
double read_number(const JsonDocument& document, const JsonValue& value, Unit unit) {
  if (value.kind == JsonKind::Number) return value.number;
  if (value.kind == JsonKind::Text && unit == Unit::Inch) {
    if (const auto inches = inches_of(value.text)) return *inches;
  }
  refuse("client.type", document.where(value),
         fmt::format("by is {}, where a number of {} is expected{}", document.described(value),
                     unit_word(unit, kLength), odd_letter_note(value.text)),
         type_hint(value, unit));
}

std::string minus_hint(const CorrectionWords& words, double written) {
  const std::string amount = trimmed(-written, 2);
  const std::string_view opposite = opposite_action(words.action);
  if (find_correction_words(opposite, words.place) == nullptr) {
    return fmt::format("did you mean {}? An amount has no minus sign", amount);
  }
  return fmt::format("an amount has no minus sign: write \"{}\": \"{}\" and {}, or \"{}\": \"{}\"",
                     words.action, words.place, amount, opposite, words.place);
}

// Requires: `written` is over the limit.
std::string large_hint(double written, Unit unit) {
  const Length taken_for_mm = Length::mm(written);
  const bool slightly = in_mm(written, kLength, unit) < kNearAmount * kMostCorrection;
  if (slightly || taken_for_mm.mm() > kMostCorrection) {
    return "a toile that is so far off is not corrected: measure again and redraft";
  }
  const double meant = unit == Unit::Cm ? taken_for_mm.cm() : taken_for_mm.inches();
  return fmt::format("did you mean {}? What is written looks like mm; this file's unit is {}",
                     trimmed(meant, 2), unit_name(unit, kLength));
}

std::string amount_hint(const CorrectionWords& words, double written, Unit unit) {
  if (written < 0.0) return minus_hint(words, written);
  if (written == 0.0) return "leave the correction out if nothing is to be changed";
  return large_hint(written, unit);
}

// "length: how far it is to move on the body; tuck_depth: ..."
std::string ways_text(const CorrectionWords& words) {
  std::string text;
  for (const AmountAs as : words.readings) {
    if (!text.empty()) text += "; ";
    text += fmt::format("\"{}\": {}", amount_word(as), amount_meaning(as));
  }
  return text;
}

AmountAs way_named(const JsonDocument& document, const JsonValue& value,
                   const CorrectionWords& words) {
  const auto as = amount_named(value.text);
  if (!as) {
    std::vector<std::string_view> known;
    std::ranges::transform(words.readings, std::back_inserter(known), amount_word);
    refuse("client.amount", document.where(value),
           fmt::format("{} is not a way to measure an amount{}", document.as_written(value),
                       odd_letter_note(value.text)),
           did_you_mean(value.text, known));
  }
  return *as;
}

void check_way(const JsonDocument& document, const JsonValue& value, const CorrectionWords& words,
               AmountAs as, BodySide side) {
  if (std::ranges::find(words.readings, as) == words.readings.end()) {
    refuse("client.amount", document.where(value),
           fmt::format("\"{}\" of \"{}\" cannot be measured as \"{}\"", words.action, words.place,
                       amount_word(as)),
           "say with \"as\" how you measured it: " + ways_text(words), {"as"});
  }
  if (as == AmountAs::WholeGirth && side != BodySide::Both) {
    refuse("client.amount", document.where(value),
           fmt::format("\"whole_girth\" counts both sides; this correction is for the {} alone",
                       side_word(side)),
           "write the cloth of that side, \"as\": \"per_half\", or leave \"side\" out",
           {"as", "side"});
  }
}

}  // namespace

Length read_amount(const JsonDocument& document, const JsonValue& correction,
                   const CorrectionWords& words, Unit unit) {
  const JsonValue& value =
      required(document, correction, "by",
               fmt::format("write how much, in {}: \"by\": {}", unit_word(unit, kLength),
                           unit == Unit::Cm ? "1.0" : "\"1/2\""));
  const double written = read_number(document, value, unit);
  const double amount = in_mm(written, kLength, unit);
  if (amount > 0.0 && amount <= kMostCorrection) return Length::mm(amount);
  refuse("client.range", document.where(value),
         fmt::format("by is {} {}; a correction is more than 0 and at most {}",
                     document.as_written(value), unit_name(unit, kLength),
                     measure_text(kMostCorrection, kLength, unit)),
         amount_hint(words, written, unit));
}

AmountAs read_way(const JsonDocument& document, const JsonValue& correction,
                  const CorrectionWords& words, BodySide side) {
  const JsonValue* value = document.member(correction, "as");
  if (value == nullptr && !words.must_say) return words.readings.front();
  if (value == nullptr) {
    refuse("client.amount", document.where(correction),
           fmt::format("\"as\" is missing: the amount of \"{}\": \"{}\" can be measured in {} ways",
                       words.action, words.place, words.readings.size()),
           "say with \"as\" how you measured it: " + ways_text(words), {"as"});
  }
  expect(document, *value, JsonKind::Text,
         "say with \"as\" how you measured it: " + ways_text(words));
  const AmountAs as = way_named(document, *value, words);
  check_way(document, *value, words, as, side);
  return as;
}

}  // namespace blockwright
