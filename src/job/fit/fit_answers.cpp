#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/job/fit_words.hpp"
#include "blockwright/measure/correction_table.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

std::string amount_number(Length length, Unit unit) {
  return unit == Unit::Inch ? inch_fraction(length.inches()) : trimmed(length.cm(), 2);
}

/// What a pin takes out or lets out is counted on one half of the body.
std::string usual_text(const CorrectionWords& words, Unit unit) {
  const UsualAmount& amount = fitting_row(words.row).amount;
  const auto may_be = [&](AmountAs as) { return std::ranges::count(words.readings, as) > 0; };
  const bool of_half = may_be(AmountAs::PerHalf);
  const bool of_side = may_be(AmountAs::Length) && may_be(AmountAs::WholeGirth);
  return fmt::format("{} {}{} ({} to {})", amount_number(amount.usual, unit), unit_name(unit),
                     of_half   ? " on each half"
                     : of_side ? " on each side"
                               : "",
                     amount_number(amount.least, unit), amount_number(amount.most, unit));
}

FitAnswer answer_of(const FoundCorrection& found, Unit unit) {
  const CorrectionWords& words = *found.words;
  return {found.words,
          std::string(words.action) + " " + std::string(words.place),
          found.cure,
          fitting_row(words.row).seen,
          usual_text(words, unit),
          found.side};
}

/// What she spoke of besides a fault of the bodice.
std::string beyond_text(SaidOf set_aside) {
  if (set_aside == SaidOf::Sleeve) return "The bodice has no sleeve.\n";
  if (set_aside == SaidOf::BelowWaist) return "The bodice ends at the waist.\n";
  return {};
}

std::string nothing_to_do_text(SaidOf set_aside) {
  switch (set_aside) {
    case SaidOf::Fault:
      break;
    case SaidOf::NoFault:
      return "From what you say nothing is wrong there, so there is nothing to correct.\n";
    case SaidOf::Sleeve:
      return "The bodice has no sleeve: say what you see at its armhole or shoulder.\n";
    case SaidOf::BelowWaist:
      return "The bodice ends at the waist: say what you see there or above it.\n";
  }
  return {};
}

std::vector<FitAnswer> answers_of(const std::vector<FoundCorrection>& found, Unit unit) {
  std::vector<FitAnswer> answers;
  answers.reserve(found.size());
  for (const FoundCorrection& one : found) answers.push_back(answer_of(one, unit));
  return answers;
}

}  // namespace

FitAnswers answers_to(std::string_view seen, Unit unit) {
  const FoundCorrections found = find_corrections(seen);
  return {answers_of(found.best, unit),
          found.not_understood,
          found.side,
          found.is_whole,
          found.is_nowhere,
          found.set_aside};
}

std::vector<std::string_view> part_names() {
  std::vector<std::string_view> names;
  for (const FittingPart& part : fitting_parts()) names.push_back(part.name);
  return names;
}

std::vector<FitAnswer> answers_at(std::string_view part, Unit unit) {
  const FittingPart* found = fitting_part(part);
  return found == nullptr ? std::vector<FitAnswer>() : answers_of(found->corrections, unit);
}

std::string answers_text(const std::vector<FitAnswer>& answers) {
  std::size_t width = 0;
  for (const FitAnswer& answer : answers) width = std::max(width, answer.words.size());
  const bool differ = std::ranges::any_of(
      answers, [&](const FitAnswer& answer) { return answer.side != answers.front().side; });
  std::string text;
  for (const FitAnswer& answer : answers) {
    const bool is_sided = differ && answer.side != BodySide::Both;
    text += fmt::format("  {:<{}}  {}\n  {:<{}}  usual {}{}\n", answer.words, width, answer.cure,
                        "", width, answer.usual,
                        is_sided ? fmt::format("; --side {}", side_word(answer.side)) : "");
  }
  return text;
}

std::string not_found_text(const FitAnswers& answers) {
  std::vector<std::string> words;
  for (const std::string& word : answers.not_understood) words.push_back("\"" + shown(word) + "\"");
  std::string text;
  if (!words.empty()) text = fmt::format("Not understood: {}.\n", fmt::join(words, ", "));
  if (answers.is_nowhere && !answers.best.empty()) {
    text += fmt::format(
        "Where is it? Say the part of the body with it, \"at the back\", \"at the waist\": these "
        "are "
        "guesses.\nParts of the body: {}.\n",
        fmt::join(part_names(), ", "));
  }
  text += left_out_text(answers);
  if (!answers.best.empty()) return text + beyond_text(answers.set_aside);
  if (answers.set_aside != SaidOf::Fault) return text + nothing_to_do_text(answers.set_aside);
  if (words.empty() && answers.left_out.empty()) {
    text += "Nothing of the catalogue is found by these words alone.\n";
  }
  return text + fmt::format(
                    "Say where it is and what the cloth does there: \"armhole digs in\", \"waist "
                    "loose\".\nParts of the body: {}.\n",
                    fmt::join(part_names(), ", "));
}

}  // namespace blockwright
