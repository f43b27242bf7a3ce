#include "fit_corrections.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/symptom_search.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/report/report.hpp"
#include "most_taken.hpp"
#include "option_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace blockwright {
namespace {

constexpr const char* kInWords =
    "write it behind the --add that it is for, or into its words: --add \"take_in waist 1.0 "
    "per_half\"";

std::string words_text(const CorrectionWords& words) {
  return std::string(words.action) + " " + std::string(words.place);
}

std::string place_of_add(const FitJob& job, std::size_t item) {
  return place_of("--add", job.places, item);
}

/// For each value of an option the --add before it, as they were typed.
std::vector<std::size_t> owners_as_typed(const FitJob& job, const std::string& option) {
  std::vector<std::size_t> owners;
  std::size_t adds = 0;
  for (const std::string& name : job.typed) {
    if (name == "--add") ++adds;
    if (name != option) continue;
    if (job.add.size() == 1) {
      owners.push_back(0);
    } else if (adds == 0) {
      refuse_option(option,
                    fmt::format("{} corrections are added, and it is before the first of them: "
                                "for which is it?",
                                job.add.size()),
                    kInWords);
    } else {
      owners.push_back(adds - 1);
    }
  }
  return owners;
}

/// As they are in a job file: one for each.
std::vector<std::size_t> owners_in_order(const FitJob& job, const std::string& option,
                                         std::size_t values) {
  if (values != job.add.size()) {
    refuse_option(place_of(option, job.places),
                  fmt::format("{} of them for {} corrections to add", values, job.add.size()),
                  "give one for each, \"\" where there is none; or write it into the words: "
                  "\"take_in waist 1.0 per_half\"");
  }
  std::vector<std::size_t> owners(values);
  for (std::size_t i = 0; i < values; ++i) owners[i] = i;
  return owners;
}

/// The value of an option that belongs to an item of --add; nothing if it has none.
template <class Value>
std::optional<Value> value_for(const FitJob& job, std::size_t item, const std::string& option,
                               const std::vector<Value>& values) {
  if (values.empty()) return std::nullopt;
  const bool typed = std::ranges::find(job.typed, option) != job.typed.end();
  const std::vector<std::size_t> owners =
      typed ? owners_as_typed(job, option) : owners_in_order(job, option, values.size());
  if (std::ranges::count(owners, item) > 1) {
    refuse_option(option, "more than one for \"" + shown(job.add[item]) + "\": which is meant?",
                  kInWords);
  }
  const auto found = std::ranges::find(owners, item);
  if (found == owners.end()) return std::nullopt;
  return values[static_cast<std::size_t>(found - owners.begin())];
}

std::string amount_of(const FitJob& job, std::size_t item, const TypedCorrection& typed,
                      Unit unit) {
  const auto amount = amount_typed(typed.amount);
  if (!amount) {
    refuse_option(place_of_add(job, item), "'" + shown(typed.amount) + "' is not an amount",
                  fmt::format("write a number, 1.5 or 1,5, or inches as on the tape, 5/8 or 1 1/2; "
                              "behind it cm, mm or in where it is not in {}",
                              unit_word(unit)));
  }
  std::string text = amount_for_file(*amount, unit);
  if (text.empty()) {
    refuse_option(place_of_add(job, item), "'" + shown(typed.amount) + "': of an inch or of a cm?",
                  fmt::format("write \"{} in\" or \"{} cm\"", amount->number, amount->number));
  }
  return text;
}

/// The correction that words may mean, with their amount: "take_in side 1 per_seam". Empty where
/// none is near.
std::string nearest_words(const std::string& words, const TypedCorrection& typed) {
  const CorrectionWords* near = nearest_correction(words);
  if (near == nullptr) {
    const FoundCorrections found = find_corrections(words);
    if (!found.is_whole || found.best.empty()) return {};
    near = found.best.front().words;
  }
  std::string text =
      words_text(*near) + " " + (amount_typed(typed.amount) ? shown(typed.amount) : "AMOUNT");
  const bool makes_sense = typed.as && std::ranges::count(near->readings, *typed.as) > 0;
  return makes_sense ? text + " " + std::string(amount_way(*typed.as).word) : text;
}

[[noreturn]] void refuse_words(const FitJob& job, std::size_t item, const TypedCorrection& typed) {
  const std::string near = nearest_words(job.add[item], typed);
  refuse_option(place_of_add(job, item),
                fmt::format("'{}' is not an action, a place and an amount", shown(job.add[item])),
                fmt::format("{}; `blockwright fit {} --ask` finds the words by what is seen",
                            near.empty() ? "write for example \"lower front_neck 1.0\""
                                         : fmt::format("perhaps you mean \"{}\"", near),
                            as_argument(job.client)));
}

TypedCorrection words_of(const FitJob& job, std::size_t item) {
  const std::string& words = job.add[item];
  TypedCorrection typed = correction_typed(words);
  const bool is_known = find_correction_words(typed.action, typed.place) != nullptr;
  if (!is_known) refuse_words(job, item, typed);
  if (typed.amount.empty()) {
    refuse_option(
        place_of_add(job, item), "'" + shown(words) + "' has no amount",
        fmt::format("write it behind the place: \"{} {} 1.0\"", typed.action, typed.place));
  }
  if (!typed.odd.empty()) {
    refuse_option(
        place_of_add(job, item),
        fmt::format("'{}' of '{}' is not understood", shown(typed.odd), shown(words)),
        "behind the amount may be its unit, cm, mm or in; how it was counted, \"each side\", "
        "\"altogether\", \"per half\" or another word of --as; left or right");
  }
  return typed;
}

/// What the words say and what the option says; they must not differ.
template <class Value>
std::optional<Value> agreed(const FitJob& job, std::size_t item, const std::string& option,
                            const std::optional<Value>& in_words,
                            const std::optional<Value>& given) {
  if (in_words && given && *in_words != *given) {
    refuse_option(place_of_add(job, item),
                  fmt::format("'{}' and its {} say different things", shown(job.add[item]), option),
                  "say it once");
  }
  return in_words ? in_words : given;
}

/// "write "take in waist 2 cm per half": cloth on one half of the body, or ...".
std::string lines_of_ways(const CorrectionWords& words, const std::string& amount) {
  std::vector<std::string> lines;
  for (const AmountAs as : words.readings) {
    const std::string way = words.readings.size() == 1 ? "" : " " + way_text(words, as);
    lines.push_back(fmt::format("\"{} {}{}\": {}", name_text(words_text(words)), shown(amount), way,
                                amount_way(as).meaning));
  }
  return fmt::format("write {}", fmt::join(lines, "; or "));
}

/// Nothing says how much cloth a pin means but the fitter.
void judge_unsaid_way(const FitJob& job, std::size_t item, const TypedCorrection& typed) {
  const CorrectionWords& words = *find_correction_words(typed.action, typed.place);
  if (!words.must_say) return;
  throw UsageError(
      {.severity = Severity::Error,
       .code = "client.amount",
       .where = place_of_add(job, item),
       .message = fmt::format("'{}' does not say how the amount was counted", shown(job.add[item])),
       .hint = lines_of_ways(words, typed.amount)});
}

/// A way that the correction is not counted in is refused where it was said.
void judge_way(const FitJob& job, std::size_t item, const TypedCorrection& typed, AmountAs as) {
  const CorrectionWords& words = *find_correction_words(typed.action, typed.place);
  if (auto fault = fault_of_way(words, typed.amount, as)) {
    fault->where = typed.as ? place_of_add(job, item) : place_of("--as", job.places, item);
    throw UsageError(*fault);
  }
}

/// By AmountAs: "widen neck is not measured ...".
constexpr std::array<std::string_view, 5> kMeasured{
    "as a length", "by the depth of a tuck", "on each piece of a seam", "on one half of the body",
    "round the whole body"};

/// What was typed with --add is refused in the words in which it is typed.
struct AddedFault {
  const char* code;
  std::string message, hint;
};

[[noreturn]] void refuse_added(const FitJob& job, std::size_t item, const AddedFault& fault) {
  throw UsageError({.severity = Severity::Error,
                    .code = fault.code,
                    .where = place_of_add(job, item),
                    .message = fmt::format("'{}' {}", shown(job.add[item]), fault.message),
                    .hint = fault.hint});
}

/// "write "lower underarm 1", or "raise underarm 1"".
std::string without_minus(const CorrectionWords& words, const std::string& amount) {
  const std::string plain = amount.substr(amount.find_first_not_of('-'));
  std::string line = fmt::format("write \"{} {}\"", name_text(words_text(words)), plain);
  const std::string_view other = opposite_action(words.action);
  if (find_correction_words(other, words.place) == nullptr) return line;
  return fmt::format("{}, or \"{} {} {}\" for the other way", line, name_text(other),
                     name_text(words.place), plain);
}

void judge_size(const FitJob& job, std::size_t item, const TypedCorrection& typed, Unit file_unit) {
  const Length by = amount_typed(typed.amount)->length(file_unit);
  if (by > Length()) return;
  if (by == Length()) {
    refuse_added(
        job, item,
        {"client.range", "changes nothing: its amount is 0", "write how much, or leave it out"});
  }
  const CorrectionWords& words = *find_correction_words(typed.action, typed.place);
  refuse_added(job, item,
               {"client.range", "has a minus sign", without_minus(words, shown(typed.amount))});
}

Correction with_amount(const NewCorrection& added, Length by) {
  const CorrectionWords& words = *find_correction_words(added.action, added.place);
  return {.action = added.action,
          .place = added.place,
          .by = by,
          .as = added.as.value_or(words.readings.front()),
          .side = added.side,
          .seen = added.seen};
}

/// "; a correction is at most 10 cm", or less where her block takes less; empty where it takes
/// nothing of it.
std::string at_most(const FitJob& job, const std::string& text, const NewCorrection& added) {
  const BlockRun drafted = drafted_block(block_source(text, job, job.session));
  const Unit unit = drafted.unit;
  const Length step = printed_step(unit), most = std::floor(kMostCorrection / step) * step;
  std::string of_any = fmt::format("; a correction is at most {}", amount_text(most, unit));
  if (has_errors(drafted.problems)) return of_any;
  const FittingName fitting = meant_fitting(drafted.client, {job.date, job.toile});
  const std::string date = fitting.date.empty() ? drafted.session.date : fitting.date;
  auto corrections = active_corrections(drafted.client);
  corrections.push_back({numbered_corrections(drafted.client).size() + 1, date,
                         fitting.toile.value_or(1), with_amount(added, most + step)});
  const auto taken = most_taken(drafted, corrections);
  if (!taken) return {};
  if (*taken >= most) return of_any;
  return fmt::format("; this block takes up to \"{}\"",
                     words_with_amount(corrections.back().correction, *taken, unit));
}

void judge_side(const FitJob& job, std::size_t item, const CorrectionWords& words, BodySide side) {
  if (!words.one_sided || side != BodySide::Both) return;
  refuse_added(job, item,
               {"client.missing", "does not say which side she has it on",
                "write left or right behind the amount, or --side left"});
}

void judge_way_of_side(const FitJob& job, std::size_t item, const CorrectionWords& words,
                       const NewCorrection& added) {
  if (added.as != AmountAs::WholeGirth || added.side == BodySide::Both) return;
  const bool each_side = words.readings.front() == AmountAs::Length;
  const AmountAs of_one = each_side ? AmountAs::Length : AmountAs::PerHalf;
  refuse_added(job, item,
               {"client.amount",
                fmt::format("counts both sides, and is for the {} alone", side_word(added.side)),
                fmt::format("write the cloth of that side, {}, or leave the side out",
                            way_text(words, of_one))});
}

}  // namespace

std::optional<Problem> fault_of_way(const CorrectionWords& words, const std::string& amount,
                                    AmountAs as) {
  if (std::ranges::count(words.readings, as) > 0) return std::nullopt;
  return Problem{.severity = Severity::Error,
                 .code = "client.amount",
                 .where = {},
                 .message = fmt::format("{} is not measured {}", name_text(words_text(words)),
                                        kMeasured[static_cast<std::size_t>(as)]),
                 .hint = lines_of_ways(words, amount)};
}

void judge_most(const FitJob& job, std::size_t item, const std::string& text,
                const NewCorrection& added) {
  const Unit file_unit = client_in(text, job).unit;
  const Length by = amount_typed(added.by)->length(file_unit);
  if (by <= kMostCorrection) return;
  refuse_added(job, item,
               {"client.range",
                fmt::format("is {}{}", amount_text(by, job.unit.value_or(file_unit)),
                            at_most(job, text, added)),
                "look at the amount and its unit, cm, mm or in; a toile that is so far off is not "
                "corrected: measure again and draft anew"});
}

NewCorrection correction_of(const FitJob& job, std::size_t item, Unit file_unit) {
  const TypedCorrection typed = words_of(job, item);
  const std::string by = amount_of(job, item, typed, file_unit);
  const auto as = value_for(job, item, "--as", job.as).value_or(std::nullopt);
  const auto side = value_for(job, item, "--side", job.side).value_or(std::nullopt);
  const auto way = agreed(job, item, "--as", typed.as, as);
  if (way) {
    judge_way(job, item, typed, *way);
  } else {
    judge_unsaid_way(job, item, typed);
  }
  judge_size(job, item, typed, file_unit);
  const CorrectionWords& words = *find_correction_words(typed.action, typed.place);
  NewCorrection added{
      .action = typed.action,
      .place = typed.place,
      .by = by,
      .as = way,
      .side = agreed(job, item, "--side", typed.side, side).value_or(BodySide::Both),
      .seen = value_for(job, item, "--seen", job.seen).value_or("")};
  judge_side(job, item, words, added.side);
  judge_way_of_side(job, item, words, added);
  return added;
}

}  // namespace blockwright
