#include "fit_questions.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "fit_choice.hpp"

#include <algorithm>
#include <utility>

namespace blockwright {
namespace {

std::string without_ends(const std::string& line) {
  const std::size_t begin = line.find_first_not_of(" \t\r");
  if (begin == std::string::npos) return "";
  return line.substr(begin, line.find_last_not_of(" \t\r") - begin + 1);
}

bool is_yes(const std::string& word) { return word == "y" || word == "yes"; }
bool is_no(const std::string& word) { return word == "n" || word == "no"; }

/// An empty line, "quit" and the end of the input leave the question.
GoesOn without_answer(const std::optional<std::string>& line) {
  return line && in_small_letters(*line) == "back" ? GoesOn::Back : GoesOn::Leave;
}
bool has_answer(const std::optional<std::string>& line) {
  if (!line || line->empty()) return false;
  const std::string word = in_small_letters(*line);
  return word != "back" && !ends_questions(word);
}

/// What was typed of what is done, without the fitting.
WantedAmount amount_of(const WantedCorrection& wanted) {
  return {wanted.amount, wanted.as, wanted.side};
}

/// Whatever the fitting is.
bool is_refused_for_amount(const FitPreview& preview) {
  const std::string& fault = preview.at_fault;
  return preview.does.empty() && (fault == "amount" || fault == "as" || fault == "side");
}

bool is_of_fitting(FitQuestion question) {
  return question == FitQuestion::Date || question == FitQuestion::Toile;
}

std::string refusal_of(const Problem& problem) {
  const std::string hint = problem.hint.plain();
  return problem.message.plain() + (hint.empty() ? "" : ": " + hint);
}

}  // namespace

void FitQuestions::introduce() const {
  prompt_.out() << "\nSay in your own words what you see: \"armhole digs in\", \"waist loose\".\n"
                << "A part of the body alone shows all that can be done there: " << part_list()
                << ".\n\"all\" shows everything, \"back\" goes to the question before. Enter or "
                   "\"done\" ends; "
                   "what was added is kept.\n";
}

void FitQuestions::say(std::string_view sentence) const {
  prompt_.out() << "  " << printable(sentence) << "\n";
}

/// What was entered is not lost to a line that is too long.
std::optional<std::string> FitQuestions::asked(const std::string& question) const {
  for (;;) {
    try {
      const auto line = prompt_.answer(question);
      return line ? std::optional(without_ends(*line)) : std::nullopt;
    } catch (const UsageError& error) {
      say(refusal_of(error.problem()));
    }
  }
}

/// Without an answer the correction is not written, which is said before it is left.
std::optional<std::string> FitQuestions::needed(const std::string& question) const {
  auto line = asked(question);
  if (!line || !line->empty()) return line;
  say("Without an answer this correction is not written; Enter again leaves it out.");
  auto again = asked(question);
  if (again && again->empty()) say("Left out: nothing was written of it.");
  return again;
}

void FitQuestions::show(const std::vector<FitAnswer>& answers) const {
  prompt_.out() << "\n" << printable_lines(lettered_text(answers));
}

std::optional<WantedCorrection> FitQuestions::correction(FitChoice& choice) const {
  for (;;) {
    const bool begun = choice.has_answers();
    if (begun) show(choice.answers());
    if (!choice.remark().empty()) prompt_.out() << printable_lines(choice.remark());
    const auto line = asked(begun ? "Which? Its letter or its words; or more words; or \"back\""
                                  : "\nWhat do you see?");
    if (!line) return std::nullopt;
    if (ends_questions(in_small_letters(*line)) || (line->empty() && !begun)) return std::nullopt;
    if (auto wanted = choice.hear(line->empty() ? "back" : *line)) return wanted;
  }
}

/// What was said of an amount is not passed over: where no way is asked for, the amount is again.
void FitQuestions::forget_wrong_way(WantedCorrection& wanted) const {
  if (!wanted.as) return;
  const auto fault = fault_of_way(*wanted.correction, wanted.amount, *wanted.as);
  if (!fault) return;
  say(refusal_of(*fault));
  wanted.as = std::nullopt;
  if (!wanted.correction->must_say) wanted.amount.clear();
}

GoesOn FitQuestions::complete(WantedCorrection& wanted) const {
  if (const auto amount = amount_typed(wanted.amount)) {
    if (judge_amount(*amount, wanted) == GoesOn::Leave) return GoesOn::Leave;
  }
  for (;;) {
    forget_wrong_way(wanted);
    const FitQuestion* open = std::ranges::find_if(
        kFitQuestions, [&](FitQuestion question) { return is_open(question, wanted); });
    if (open == kFitQuestions.end()) return GoesOn::Next;
    if (is_of_fitting(*open) && wanted.judged != amount_of(wanted)) {
      wanted.judged = amount_of(wanted);
      const FitPreview preview = preview_(wanted);
      if (is_refused_for_amount(preview)) return mended(wanted, preview);
    }
    const GoesOn goes_on = ask(*open, wanted);
    if (goes_on == GoesOn::Leave) return GoesOn::Leave;
    if (goes_on == GoesOn::Next) {
      std::erase(wanted.answered, *open);
      wanted.answered.push_back(*open);
    } else if (!forget_last(wanted)) {
      return GoesOn::Back;
    }
  }
}

GoesOn FitQuestions::asked_again(WantedCorrection& wanted) const {
  return forget_last(wanted) ? complete(wanted) : GoesOn::Back;
}

GoesOn FitQuestions::ask(FitQuestion question, WantedCorrection& wanted) const {
  switch (question) {
    case FitQuestion::Amount:
      return ask_amount(wanted);
    case FitQuestion::Way:
      return ask_way(wanted);
    case FitQuestion::Side:
      return ask_side(wanted);
    case FitQuestion::Date:
      return ask_date(wanted);
    case FitQuestion::Toile:
      return ask_toile(wanted);
  }
  return GoesOn::Leave;
}

GoesOn FitQuestions::ask_amount(WantedCorrection& wanted) const {
  const std::string unit(unit_word(unit_));
  say(name_text(wanted.words) + ": " + std::string(cure_of_answer(wanted)));
  for (;;) {
    const auto line = needed("By how much, in " + unit + "? Usual " + wanted.usual);
    if (!has_answer(line)) return without_answer(line);
    const auto amount = amount_in(*line, wanted);
    if (!amount) {
      say("\"" + shown(*line) + "\" is not an amount: 1.5, 1,5, 5/8 or 1 1/2; with cm, mm or in " +
          "behind it where it is not in " + unit);
      continue;
    }
    const GoesOn goes_on = judge_amount(*amount, wanted);
    if (goes_on != GoesOn::Back) return goes_on;
  }
}

/// Nothing is asked of the file before it is an amount in the unit that she is asked in. Back: to
/// be asked again.
GoesOn FitQuestions::judge_amount(const TypedAmount& amount, WantedCorrection& wanted) const {
  if (amount.length(unit_) == Length()) {
    say("0 changes nothing: more than 0, usual " + wanted.usual);
    wanted.amount.clear();
    return GoesOn::Back;
  }
  return amount_for_file(amount, unit_).empty() ? ask_unit(wanted) : GoesOn::Next;
}

/// Of a fraction, which is of a cm or of an inch; or another amount.
GoesOn FitQuestions::ask_unit(WantedCorrection& wanted) const {
  const std::string number = std::exchange(wanted.amount, "");
  for (;;) {
    const auto line = needed("  " + shown(number) + " of what: cm or in?");
    if (!has_answer(line)) return without_answer(line);
    const std::string with_unit = number + " " + *line;
    const auto amount = amount_typed(with_unit);
    if (amount && amount->unit) {
      wanted.amount = with_unit;
      return GoesOn::Next;
    }
    if (const auto other = amount_in(*line, wanted)) return judge_amount(*other, wanted);
    say("cm or in, or another amount");
  }
}

GoesOn FitQuestions::ask_way(WantedCorrection& wanted) const {
  const CorrectionWords& words = *wanted.correction;
  for (const AmountAs as : words.readings) {
    const AmountWay& way = amount_way(as);
    prompt_.out() << "  " << way_text(words, as) << ": " << way.meaning << "\n";
  }
  for (;;) {
    const auto line = needed("How did you read " + shown(wanted.amount) + "?");
    if (!has_answer(line)) return without_answer(line);
    wanted.as = way_meant(*line, words);
    if (wanted.as) return GoesOn::Next;
    const auto goes_on = other_amount(*line, wanted);
    if (goes_on && (*goes_on != GoesOn::Next || wanted.as)) return *goes_on;
    if (!goes_on)
      say("one of the words above; its beginning will do; or \"no\", or another amount");
  }
}

/// "no", or another amount, where it was asked how one was read; nothing if it is neither.
std::optional<GoesOn> FitQuestions::other_amount(const std::string& answer,
                                                 WantedCorrection& wanted) const {
  if (is_no(in_small_letters(answer))) {
    wanted.amount.clear();
    return ask_amount(wanted);
  }
  const auto amount = amount_in(answer, wanted);
  if (!amount) return std::nullopt;
  const GoesOn goes_on = judge_amount(*amount, wanted);
  return goes_on == GoesOn::Back ? ask_amount(wanted) : goes_on;
}

GoesOn FitQuestions::ask_side(WantedCorrection& wanted) const {
  for (;;) {
    const auto line = needed("Which side, as she has it: left or right?");
    if (!has_answer(line)) return without_answer(line);
    const std::string word = in_small_letters(*line);
    if (word == "l" || word == "left") wanted.side = BodySide::Left;
    if (word == "r" || word == "right") wanted.side = BodySide::Right;
    if (wanted.side) return GoesOn::Next;
    say("left or right");
  }
}

/// The toile goes with it where the file has a fitting of that day.
GoesOn FitQuestions::ask_date(WantedCorrection& wanted) const {
  for (;;) {
    const auto line = asked("Date of the fitting (Enter: today, " + today_ + ")");
    if (!line || (!line->empty() && !has_answer(line))) return without_answer(line);
    const std::string date = line->empty() ? today_ : *line;
    if (const auto fault = fault_of_date(client_, date, files_)) {
      say(refusal_of(*fault));
      continue;
    }
    wanted.fitting = meant_fitting(client_, {date, wanted.fitting.toile}, files_);
    return GoesOn::Next;
  }
}

GoesOn FitQuestions::ask_toile(WantedCorrection& wanted) const {
  const int next = next_toile_number(client_, files_);
  for (;;) {
    const auto line = asked("Which toile? (Enter: " + std::to_string(next) + ")");
    if (!line || (!line->empty() && !has_answer(line))) return without_answer(line);
    const auto number = line->empty() ? std::optional(next) : number_in<int>(*line);
    if (number && *number > 0) {
      wanted.fitting.toile = *number;
      return GoesOn::Next;
    }
    say("a number from 1: the first toile is 1");
  }
}

GoesOn FitQuestions::mended(WantedCorrection& wanted, const FitPreview& refused) const {
  for (const Problem& problem : refused.problems) say(refusal_of(problem));
  const std::string& fault = refused.at_fault;
  const CorrectionWords& words = *wanted.correction;
  const bool both = fault == "fitting";
  if (fault == "amount") {
    wanted.amount.clear();
  } else if (fault == "as") {
    wanted.as = std::nullopt;
    if (!words.must_say) wanted.amount.clear();
  } else if (fault == "side" && words.one_sided) {
    wanted.side = std::nullopt;
  } else if (both || fault == "date" || fault == "toile") {
    if (both || fault == "date") wanted.fitting.date.clear();
    if (both || fault == "toile") wanted.fitting.toile = std::nullopt;
  } else {
    return GoesOn::Leave;
  }
  return complete(wanted);
}

std::string FitQuestions::amount_to_add(const WantedCorrection& wanted) const {
  const auto amount = amount_typed(wanted.amount);
  const bool is_bare = amount && !amount->unit;
  if (!is_bare || unit_ == file_unit_) return wanted.amount;
  return wanted.amount + " " + std::string(unit_name(unit_));
}

std::string FitQuestions::in_words(const WantedCorrection& wanted) const {
  const auto amount = amount_typed(wanted.amount);
  std::string text = name_text(wanted.words) + " " + shown(wanted.amount);
  if (amount && !amount->unit) text += " " + std::string(unit_name(unit_));
  if (wanted.as) text += " " + way_text(*wanted.correction, *wanted.as);
  if (wanted.side) text += ", " + std::string(side_word(*wanted.side));
  return text + ", toile " + std::to_string(wanted.fitting.toile.value_or(1)) + " of " +
         shown(wanted.fitting.date);
}

Agreed FitQuestions::agreed(WantedCorrection& wanted, const FitPreview& preview) const {
  say(in_words(wanted));
  say("On the pattern: " + preview.does + ".");
  for (const Problem& problem : preview.problems) {
    say("Mind, " + problem.where + ": " + refusal_of(problem));
  }
  while (const auto line = asked("Write it? (Enter: yes; no; or another amount)")) {
    const std::string word = in_small_letters(*line);
    if (word.empty() || is_yes(word)) return Agreed::Yes;
    if (word == "back") return Agreed::Back;
    if (is_no(word) || word == "q" || word == "quit" || word == "exit") {
      say("Not written.");
      return Agreed::No;
    }
    const WantedCorrection before = wanted;
    if (const auto amount = amount_in(*line, wanted)) {
      const GoesOn goes_on = judge_amount(*amount, wanted);
      if (goes_on == GoesOn::Next) return Agreed::OtherAmount;
      wanted = before;
      if (goes_on == GoesOn::Leave) return Agreed::No;
      continue;
    }
    say("yes, no, or another amount, with cm, mm or in behind it where it is not in " +
        std::string(unit_word(unit_)));
  }
  return Agreed::No;
}

}  // namespace blockwright
