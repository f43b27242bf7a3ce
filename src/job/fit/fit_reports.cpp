#include "fit_reports.hpp"

#include "blockwright/base/printable.hpp"
#include "blockwright/job/tape_form.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

// Ours: no tape shows less.
constexpr Length kLeastTold = Length::mm(0.5);

/// A length before and after, in mm.
struct WatchedLength {
  std::string name;
  double before = 0.0;
  double after = 0.0;
};

std::vector<WatchedLength> lengths_between(const BlockRun& without, const BlockRun& with_it,
                                           BodySide side) {
  const auto of = [side](const BlockRun& run) -> const std::vector<MovedLength>& {
    const bool left = side == BodySide::Left && !run.fitted.left_lengths.empty();
    return left ? run.fitted.left_lengths : run.fitted.right_lengths;
  };
  std::vector<WatchedLength> lengths;
  for (const MovedLength& is : of(with_it)) {
    const auto was = std::ranges::find(of(without), is.name, &MovedLength::name);
    lengths.push_back({is.name, was == of(without).end() ? is.before : was->after, is.after});
  }
  return lengths;
}

std::string length_words(const WatchedLength& length, Unit unit) {
  const Length before = Length::mm(length.before), after = Length::mm(length.after);
  const Length change = as_printed(after, unit) - as_printed(before, unit);
  const std::string name = length.name == "bust_line" ? "bust" : name_text(length.name);
  if (change < kLeastTold && -change < kLeastTold) {
    return fmt::format("{} {} {}, stays", name, number_text(before, unit), unit_name(unit));
  }
  return fmt::format("{} {} -> {} {} ({})", name, number_text(before, unit),
                     number_text(after, unit), unit_name(unit), change_text(change, unit));
}

/// Where the second list has one more than the first.
std::size_t first_difference(const std::vector<NumberedCorrection>& before,
                             const std::vector<NumberedCorrection>& after) {
  std::size_t i = 0;
  while (i < before.size() && i < after.size() && before[i].toile == after[i].toile &&
         before[i].date == after[i].date && before[i].correction == after[i].correction) {
    ++i;
  }
  return i;
}

bool is_watched(const NumberedCorrection& added, const std::string& name) {
  const Correction& correction = added.correction;
  const auto& lengths = watched_at(row_of(correction).row, correction.place).lengths;
  return std::ranges::count(lengths, name, &LengthMoved::name) > 0;
}

/// The side that she named with it, or that it must be told.
std::string side_option(const FitAnswer& answer) {
  if (answer.side != BodySide::Both) return fmt::format(" --side {}", side_word(answer.side));
  return answer.correction->one_sided ? " --side left, or --side right" : "";
}

std::string_view set_aside_word(SaidOf said) {
  switch (said) {
    case SaidOf::Fault:
      break;
    case SaidOf::NoFault:
      return "no_fault";
    case SaidOf::Sleeve:
      return "sleeve";
    case SaidOf::BelowWaist:
      return "below_waist";
  }
  return "";
}

}  // namespace

std::string asked_text(const FitJob& job, const FitAnswers& answers) {
  std::string text = fmt::format("\"{}\"\n", shown(*job.ask));
  if (!answers.best.empty()) text += "\n" + answers_text(answers.best) + "\n";
  text += not_found_text(answers);
  if (answers.best.empty()) return text;
  return text + fmt::format("Add one with its amount: blockwright fit {} --add \"{} AMOUNT\"{}\n",
                            as_argument(job.client), answers.best.front().words,
                            side_option(answers.best.front()));
}

std::string answers_json(const std::string& seen, const FitAnswers& answers) {
  Json list = Json::array();
  for (const FitAnswer& answer : answers.best) {
    const UsualAmount& usual = fitting_row(answer.correction->row).amount;
    list.push_back({{"words", answer.words},
                    {"cure", answer.cure},
                    {"row", number_of(answer.correction->row)},
                    {"sign", answer.correction->sign},
                    {"usual_mm", usual.usual.mm()},
                    {"least_mm", usual.least.mm()},
                    {"most_mm", usual.most.mm()}});
    if (answer.side != BodySide::Both) list.back()["side"] = side_word(answer.side);
  }
  Json not_understood = Json::array();
  for (const std::string& word : answers.not_understood) not_understood.push_back(shown(word));
  Json whole = {{"seen", shown(seen)}, {"answers", list}, {"not_understood", not_understood}};
  if (answers.side != BodySide::Both) whole["side"] = side_word(answers.side);
  if (answers.set_aside != SaidOf::Fault) whole["set_aside"] = set_aside_word(answers.set_aside);
  return whole.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string what_it_does(const BlockRun& without, const BlockRun& with_it) {
  const std::size_t added = first_difference(without.corrections, with_it.corrections);
  for (const Effect& effect : with_it.fitted.effects) {
    if (std::ranges::count(effect.corrections, added) == 0) continue;
    std::string first, others;
    for (const WatchedLength& length : lengths_between(without, with_it, effect.side)) {
      const std::string words = length_words(length, with_it.unit);
      if (length.name == "bust_line" || length.name == "waist") {
        first += (first.empty() ? "" : "; ") + words;
      } else if (is_watched(with_it.corrections[added], length.name)) {
        others += "; " + words;
      }
    }
    return first + others;
  }
  return {};
}

}  // namespace blockwright
