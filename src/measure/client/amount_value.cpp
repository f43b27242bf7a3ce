#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "client_file.hpp"
#include "measure_text.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

constexpr MeasurementKind kLength = MeasurementKind::Length;
// An amount this near to the limit is no slip of unit; common practice, no source.
constexpr double kNearAmount = 1.1;

constexpr NumberHints kAmount{
    .cm = "write one number without quotes, with a point: 1.0; or with its unit: \"5/8 in\"",
    .inches =
        "write a number, 0.5, or a fraction in quotes as on the tape, \"1/2\"; or with its "
        "unit: \"1.5 cm\""};

// An amount as it is written, and what it is.
struct WrittenAmount {
  std::string text;   // with its unit: "1.5 cm", "5/8 in"
  std::string plain;  // without
  double number = 0.0;
  Length length;
};

std::string minus_hint(const CorrectionWords& words, const WrittenAmount& written) {
  const std::string amount = written.plain.substr(written.plain.find_first_not_of('-'));
  const std::string_view opposite = opposite_action(words.action);
  if (find_correction_words(opposite, words.place) == nullptr) {
    return fmt::format("did you mean {}? An amount has no minus sign", amount);
  }
  return fmt::format("an amount has no minus sign: write \"{}\": \"{}\" and {}, or \"{}\": \"{}\"",
                     words.action, words.place, amount, opposite, words.place);
}

// Requires: `written` is over the limit.
std::string large_hint(const WrittenAmount& written, Unit unit) {
  const Length taken_for_mm = Length::mm(written.number);
  const bool slightly = written.length < kNearAmount * kMostCorrection;
  if (slightly || taken_for_mm > kMostCorrection) {
    return "a toile that is so far off is not corrected: measure again and redraft";
  }
  if (written.text.ends_with("mm")) return "look at the unit";
  return fmt::format(
      "did you mean {} mm? Write it with its unit, \"{} mm\"; without one it is read in {}",
      written.plain, written.plain, unit_word(unit));
}

std::string amount_hint(const CorrectionWords& words, const WrittenAmount& written, Unit unit) {
  if (written.number < 0.0) return minus_hint(words, written);
  if (written.number == 0.0) return "leave the correction out if nothing is to be changed";
  return large_hint(written, unit);
}

[[noreturn]] void refuse_fraction(const JsonDocument& document, const JsonValue& value) {
  refuse("client.type", document.where(value),
         fmt::format("{} is {}: of an inch or of a cm?", value.key, document.as_written(value)),
         fmt::format("write \"{} in\" or \"{} cm\"; without a unit an amount is in cm, 0.5",
                     value.text, value.text));
}

// A text with its unit is read in that one, all else in the file's.
WrittenAmount written_amount(const JsonDocument& document, const JsonValue& value, Unit unit) {
  const auto typed =
      value.kind == JsonKind::Text ? amount_typed(value.text) : std::optional<TypedAmount>();
  if (typed && typed->unit) {
    const Length length = typed->length(unit);
    const double number = *typed->unit == AmountUnit::Mm   ? length.mm()
                          : *typed->unit == AmountUnit::Cm ? length.cm()
                                                           : length.inches();
    const auto word = amount_unit_word(*typed->unit);
    return {fmt::format("{} {}", typed->number, word), typed->number, number, length};
  }
  if (typed && typed->is_fraction() && unit == Unit::Cm) refuse_fraction(document, value);
  const double number = read_number(document, value, kLength, unit, kAmount);
  const std::string plain =
      value.kind == JsonKind::Text ? value.text : std::string(document.as_written(value));
  return {fmt::format("{} {}", plain, unit_name(unit, kLength)), plain, number,
          measured(number, kLength, unit).length()};
}

// "say with ... "length": how far it is to move on the body; "tuck_depth": ..."
std::string way_hint(const CorrectionWords& words) {
  std::vector<std::string> ways;
  for (const AmountAs as : words.readings) {
    ways.push_back(fmt::format("\"{}\": {}", amount_way(as).word, amount_way(as).meaning));
  }
  return fmt::format("say with \"as\" how you measured it: {}", fmt::join(ways, "; "));
}

AmountAs way_named(const JsonDocument& document, const JsonValue& value,
                   const CorrectionWords& words) {
  if (const auto as = amount_named(value.text)) return *as;
  std::vector<std::string_view> known;
  for (const AmountAs as : words.readings) known.push_back(amount_way(as).word);
  refuse("client.amount", document.where(value),
         fmt::format("{} is not a way to measure an amount{}", document.as_written(value),
                     odd_letter_note(value.text)),
         did_you_mean(value.text, known));
}

void check_way(const JsonDocument& document, const JsonValue& value, const CorrectionWords& words,
               AmountAs as, BodySide side) {
  if (std::ranges::find(words.readings, as) == words.readings.end()) {
    refuse("client.amount", document.where(value),
           fmt::format("\"{}\" of \"{}\" cannot be measured as \"{}\"", words.action, words.place,
                       amount_way(as).word),
           way_hint(words), {"as"});
  }
  if (as == AmountAs::WholeGirth && side != BodySide::Both) {
    const bool each_side = words.readings.front() == AmountAs::Length;
    const AmountAs of_one_side = each_side ? AmountAs::Length : AmountAs::PerHalf;
    refuse("client.amount", document.where(value),
           fmt::format("\"whole_girth\" counts both sides; this correction is for the {} alone",
                       side_word(side)),
           fmt::format("write the cloth of that side, \"as\": \"{}\", or leave \"side\" out",
                       amount_way(of_one_side).word),
           {"as", "side"});
  }
}

}  // namespace

GivenAmount read_amount(const JsonDocument& document, const JsonValue& correction,
                        const CorrectionWords& words, Unit unit) {
  const JsonValue& value =
      required(document, correction, "by",
               fmt::format("write how much, in {}: \"by\": {}", unit_word(unit, kLength),
                           unit == Unit::Cm ? "1.0" : "\"1/2\""));
  const WrittenAmount written = written_amount(document, value, unit);
  if (written.length > Length() && written.length <= kMostCorrection) {
    return {written.length, written.text};
  }
  refuse("client.range", document.where(value),
         fmt::format("by is {}; a correction is more than 0 and at most {}", written.text,
                     measure_text(kMostCorrection, unit)),
         amount_hint(words, written, unit));
}

Length read_remaining(const JsonDocument& document, const JsonValue& value, Unit unit,
                      std::string_view hint) {
  const WrittenAmount written = written_amount(document, value, unit);
  if (written.length >= Length() && written.length <= kMostCorrection) return written.length;
  refuse("client.range", document.where(value),
         fmt::format("{} is {}; what remains of a correction is at least 0 and at most {}",
                     value.key, written.text, measure_text(kMostCorrection, unit)),
         std::string(hint));
}

AmountAs read_way(const JsonDocument& document, const JsonValue& correction,
                  const CorrectionWords& words, BodySide side) {
  const JsonValue* value = document.member(correction, "as");
  if (value == nullptr && !words.must_say) return words.readings.front();
  if (value == nullptr) {
    refuse("client.amount", document.where(correction),
           fmt::format("\"as\" is missing: the amount of \"{}\": \"{}\" can be measured in {} ways",
                       words.action, words.place, words.readings.size()),
           way_hint(words), {"as"});
  }
  expect(document, *value, JsonKind::Text, way_hint(words));
  const AmountAs as = way_named(document, *value, words);
  check_way(document, *value, words, as, side);
  return as;
}

}  // namespace blockwright
