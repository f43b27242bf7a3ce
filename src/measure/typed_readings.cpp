#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "client/client_file.hpp"
#include "measure_text.hpp"
#include "slips.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <numeric>

namespace blockwright {
namespace {

/// A number of an answer: as it was typed, and in the letters that a client file has for it.
struct TypedNumber {
  std::string_view raw;
  std::string plain;
};

constexpr std::string_view kSpaces = " \t\r\n\v\f";

struct FractionSign {
  std::string_view sign, digits;
};
constexpr std::array<FractionSign, 7> kFractionSigns{{{"¼", "1/4"},
                                                      {"½", "1/2"},
                                                      {"¾", "3/4"},
                                                      {"⅛", "1/8"},
                                                      {"⅜", "3/8"},
                                                      {"⅝", "5/8"},
                                                      {"⅞", "7/8"}}};

[[noreturn]] void refuse_answer(const MeasurementInfo& entry, std::string_view said,
                                std::string hint, const Limit& limit = {}) {
  throw InputError({.severity = Severity::Error,
                    .code = "tape.reading",
                    .where = std::string(entry.key),
                    .message = std::string(said),
                    .hint = std::move(hint),
                    .measurements = {std::string(entry.key)},
                    .limit = limit});
}

bool in_inches(const MeasurementInfo& entry, Unit unit) {
  return unit == Unit::Inch && entry.kind != MeasurementKind::Angle;
}

bool is_unit_word(std::string_view word, const MeasurementInfo& entry, Unit unit) {
  if (entry.kind == MeasurementKind::Angle) return word == "degrees" || word == "°";
  if (unit == Unit::Inch && (word == "\"" || word == "″")) return true;
  return unit_typed(word) == unit;
}

// Of "74cm" and of "29½″" the number.
std::string_view without_unit(std::string_view word, const MeasurementInfo& entry, Unit unit) {
  constexpr std::size_t longest = std::string_view("centimetres").size();
  for (std::size_t end = word.size() > longest ? word.size() - longest : 1; end < word.size();
       ++end) {
    const bool behind_number = std::isalpha(static_cast<unsigned char>(word[end - 1])) == 0;
    if (behind_number && is_unit_word(word.substr(end), entry, unit)) return word.substr(0, end);
  }
  return word;
}

// "92,5" as "92.5", "29½" and "29-1/2" as "29 1/2".
std::string plain_number(std::string_view raw) {
  std::string plain(raw);
  std::ranges::replace(plain, ',', '.');
  for (const auto& [sign, digits] : kFractionSigns) {
    const std::size_t at = plain.find(sign);
    if (at == std::string::npos) continue;
    const bool after_digit = at > 0 && std::isdigit(static_cast<unsigned char>(plain[at - 1])) != 0;
    plain.replace(at, sign.size(), (after_digit ? "-" : "") + std::string(digits));
  }
  const std::size_t dash = plain.find('-', 1);
  const bool fraction = plain.find('/') != std::string::npos;
  if (fraction && dash != std::string::npos && inches_of(plain.substr(dash + 1))) plain[dash] = ' ';
  return plain;
}

/// Parts an answer into its numbers, a fraction together with the whole inches before it.
class AnswerParts {
 public:
  AnswerParts(const MeasurementInfo& entry, Unit unit) : entry_(entry), unit_(unit) {}

  std::vector<TypedNumber> of(std::string_view answer) {
    for (std::size_t at = answer.find_first_not_of(kSpaces); at != std::string_view::npos;
         at = answer.find_first_not_of(kSpaces, at)) {
      const std::size_t end = std::min(answer.find_first_of(kSpaces, at), answer.size());
      add_word(answer.substr(at, end - at));
      at = end;
    }
    return std::move(numbers_);
  }

 private:
  void add_word(std::string_view word) {
    const bool last = word.ends_with(',');
    if (last) word.remove_suffix(1);
    const bool unit_alone = !numbers_.empty() && is_unit_word(word, entry_, unit_);
    if (!word.empty() && !unit_alone) add_number(without_unit(word, entry_, unit_));
    open_ = !last;
  }

  void add_number(std::string_view raw) {
    const std::string plain = plain_number(raw);
    const bool is_fraction = plain.find('/') != std::string::npos;
    if (open_ && is_fraction && !numbers_.empty() && number_in<unsigned>(numbers_.back().plain)) {
      TypedNumber& whole = numbers_.back();
      const char* const end = raw.data() + raw.size();
      whole.raw = {whole.raw.data(), static_cast<std::size_t>(end - whole.raw.data())};
      whole.plain += ' ' + plain;
    } else {
      numbers_.push_back({raw, plain});
    }
  }

  const MeasurementInfo& entry_;
  Unit unit_;
  std::vector<TypedNumber> numbers_;
  bool open_ = false;  // no comma came since the last number
};

double number_typed(const TypedNumber& typed, const MeasurementInfo& entry, Unit unit) {
  const bool inches = in_inches(entry, unit);
  const auto number = inches ? inches_of(typed.plain) : std::nullopt;
  if (number) return *number;
  if (const auto decimal = number_in<double>(typed.plain); decimal && std::isfinite(*decimal)) {
    return *decimal;
  }
  const std::string fraction = inches ? std::string() : fraction_in_cm(typed.plain);
  refuse_answer(entry, "'" + shown(typed.raw) + "' is no number",
                !fraction.empty() ? fraction
                : inches          ? "type inches as on the tape, 29 1/4, or with a point, 29.25"
                                  : "type a number, 74.5, or several with spaces between");
}

// The one text that a file has for a number: 29 1/4 where a fraction was typed, else 29.25.
std::string canonical(double number, std::string_view plain) {
  constexpr int finest = 64;
  if (plain.find('/') == std::string_view::npos) return exact(number);
  const auto whole = static_cast<int>(number);
  const auto parts = static_cast<int>(std::lround((number - whole) * finest));
  if (parts == 0) return exact(number);
  const int divisor = std::gcd(parts, finest);
  return fmt::format("{}{}/{}", whole > 0 ? fmt::format("{} ", whole) : "", parts / divisor,
                     finest / divisor);
}

// At the prompt there is no key to be left out.
std::string prompt_hint(const MeasurementInfo& entry, const Written& written,
                        const std::optional<Measure>& bust) {
  const Measure value = measured(written.number, entry.kind, written.unit);
  if (written.number > 0.0 || entry.allows(-value)) return range_hint(entry, written, bust);
  return entry.name == MeasurementName::BustGirth ? "it is the one measurement that is needed"
                                                  : "Enter leaves the measurement out";
}

void add_reading(const TypedNumber& typed, const MeasurementInfo& entry,
                 const std::optional<Measure>& bust, Unit unit, TypedReadings& all) {
  const double number = number_typed(typed, entry, unit);
  const Measure reading = measured(number, entry.kind, unit);
  if (!entry.allows(reading)) {
    refuse_answer(entry,
                  fmt::format("{} {} is outside {}", shown(typed.raw), unit_name(unit, entry.kind),
                              limits_text(entry, unit)),
                  prompt_hint(entry, {typed.plain, number, unit}, bust), {entry.least, entry.most});
  }
  all.typed.push_back(canonical(number, typed.plain));
  all.readings.values.push_back(reading);
}

}  // namespace

std::optional<Unit> unit_typed(std::string_view word) {
  std::string lower(word);
  std::ranges::transform(lower, lower.begin(), [](unsigned char c) {
    return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  });
  if (lower == "cm" || lower == "centimetre" || lower == "centimetres") return Unit::Cm;
  if (lower == "centimeter" || lower == "centimeters") return Unit::Cm;
  if (lower == "in" || lower == "inch" || lower == "inches") return Unit::Inch;
  return std::nullopt;
}

TypedReadings readings_typed(std::string_view answer, MeasurementName name, Unit unit,
                             const std::optional<Measure>& bust) {
  const MeasurementInfo& entry = info(name);
  const std::vector<TypedNumber> numbers = AnswerParts(entry, unit).of(answer);
  if (numbers.empty()) refuse_answer(entry, "there is no number", "type one, or skip");
  if (numbers.size() > kMostReadings) {
    refuse_answer(entry, fmt::format("{} readings, over {}", numbers.size(), kMostReadings),
                  "type the last few");
  }
  TypedReadings all;
  for (const TypedNumber& typed : numbers) add_reading(typed, entry, bust, unit, all);
  return all;
}

}  // namespace blockwright
