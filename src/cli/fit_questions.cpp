#include "fit_questions.hpp"

#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "fit_choice.hpp"

#include <algorithm>

namespace blockwright {
namespace {

std::string without_ends(const std::string& line) {
  const std::size_t begin = line.find_first_not_of(" \t\r");
  if (begin == std::string::npos) return "";
  return line.substr(begin, line.find_last_not_of(" \t\r") - begin + 1);
}

bool is_yes(const std::string& word) { return word == "y" || word == "yes"; }
bool is_no(const std::string& word) { return word == "n" || word == "no"; }

std::string refusal_of(const Problem& problem) {
  const std::string hint = problem.hint.plain();
  return problem.message.plain() + (hint.empty() ? "" : ": " + hint);
}

/// The amount of an answer such as "2", "5/8 in" or "2 whole girth", kept in what is wanted with
/// the way and the side that were given with it; nothing if it is none.
std::optional<TypedAmount> amount_in(std::string_view answer, WantedCorrection& wanted) {
  if (auto amount = amount_typed(answer)) {
    wanted.amount = answer;
    return amount;
  }
  const TypedCorrection typed = correction_typed(wanted.words + " " + std::string(answer));
  auto amount = amount_typed(typed.amount);
  if (!amount || !typed.odd.empty()) return std::nullopt;
  wanted.amount = typed.amount;
  if (typed.as) wanted.as = typed.as;
  if (typed.side) wanted.side = typed.side;
  return amount;
}

}  // namespace

void FitQuestions::introduce() const {
  prompt_.out() << "\nSay in your own words what you see: \"armhole digs in\", \"waist loose\".\n"
                << "A part of the body alone shows all that can be done there: " << part_list()
                << ".\n\"all\" shows everything. Enter ends; what was added is kept.\n";
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

void FitQuestions::show(const std::vector<FitAnswer>& answers) const {
  prompt_.out() << "\n" << printable_lines(lettered_text(answers));
}

std::optional<WantedCorrection> FitQuestions::correction(const std::string& seen) const {
  FitChoice choice(unit_);
  if (!seen.empty()) choice.hear(seen);
  for (;;) {
    const bool begun = choice.has_answers();
    if (begun) show(choice.answers());
    if (!choice.remark().empty()) prompt_.out() << printable_lines(choice.remark());
    const auto line = asked(begun ? "Which? Its letter or its words; or more words; or \"back\""
                                  : "\nWhat do you see?");
    if (!line) return std::nullopt;
    if (line->empty() && !begun) return std::nullopt;
    if (auto wanted = choice.hear(line->empty() ? "back" : *line)) return wanted;
  }
}

bool FitQuestions::complete(WantedCorrection& wanted) const {
  say(wanted.words + ": " + std::string(cure_of_answer(wanted)));
  return ask_amount(wanted) && ask_way(wanted) && ask_side(wanted);
}

bool FitQuestions::ask_amount(WantedCorrection& wanted) const {
  while (wanted.amount.empty()) {
    const auto line =
        asked("By how much, in " + std::string(unit_name(unit_)) + "? Usual " + wanted.usual);
    if (!line || line->empty()) return false;
    const auto amount = amount_in(*line, wanted);
    if (!amount) {
      say("\"" + shown(*line) + "\" is not an amount: 1.5, 1,5, 5/8 or 1 1/2; with cm, mm or in " +
          "behind it where it is not in " + std::string(unit_word(unit_)));
      continue;
    }
    if (!amount_for_file(*amount, unit_).empty()) continue;
    const auto unit = asked("  " + shown(wanted.amount) + " of what: cm or in?");
    if (!unit) return false;
    wanted.amount = *unit == "cm" || *unit == "in" ? wanted.amount + " " + *unit : "";
  }
  return true;
}

bool FitQuestions::ask_way(WantedCorrection& wanted) const {
  const CorrectionWords& words = *wanted.correction;
  const auto makes_sense = [&](AmountAs as) { return std::ranges::count(words.readings, as) > 0; };
  if (wanted.as && makes_sense(*wanted.as)) return true;
  wanted.as = std::nullopt;
  if (!words.must_say) return true;
  for (const AmountAs as : words.readings) {
    const AmountWay& way = amount_way(as);
    std::string name(way.word);
    std::ranges::replace(name, '_', ' ');
    prompt_.out() << "  " << name << ": " << way.meaning << "\n";
  }
  while (const auto line = asked("How did you read " + shown(wanted.amount) + "?")) {
    if (line->empty()) return false;
    wanted.as = way_meant(*line, words);
    if (wanted.as) return true;
    say("one of the words above; its beginning will do");
  }
  return false;
}

bool FitQuestions::ask_side(WantedCorrection& wanted) const {
  if (wanted.side || !wanted.correction->one_sided) return true;
  while (const auto line = asked("Which side, as she has it: left or right?")) {
    if (line->empty()) return false;
    if (*line == "l" || *line == "left") wanted.side = BodySide::Left;
    if (*line == "r" || *line == "right") wanted.side = BodySide::Right;
    if (wanted.side) return true;
    say("left or right");
  }
  return false;
}

bool FitQuestions::fitting(std::string& date, int& toile) const {
  while (date.empty()) {
    const auto line = asked("Date of the fitting (Enter: today, " + today_ + ")");
    if (!line) return false;
    date = line->empty() ? today_ : *line;
  }
  return toile != 0 || ask_toile(toile);
}

bool FitQuestions::ask_toile(int& toile) const {
  while (const auto line = asked("Which toile? (Enter: 1)")) {
    const auto number = line->empty() ? std::optional(1) : number_in<int>(*line);
    if (number && *number > 0) {
      toile = *number;
      return true;
    }
    say("a number from 1: the first toile is 1");
  }
  return false;
}

bool FitQuestions::mended(WantedCorrection& wanted, const FitPreview& refused, FitJob& job) const {
  for (const Problem& problem : refused.problems) say(refusal_of(problem));
  if (refused.at_fault == "amount") {
    wanted.amount.clear();
    return ask_amount(wanted);
  }
  if (refused.at_fault == "as") {
    wanted.as = std::nullopt;
    return wanted.correction->must_say && ask_way(wanted);
  }
  if (refused.at_fault == "side") {
    wanted.side = std::nullopt;
    return wanted.correction->one_sided && ask_side(wanted);
  }
  const bool both = refused.at_fault == "fitting";
  const bool of_date = both || refused.at_fault == "date";
  const bool of_toile = both || refused.at_fault == "toile";
  if (of_date) job.date.clear();
  if (of_toile) job.toile = 0;
  return (of_date || of_toile) && fitting(job.date, job.toile);
}

Agreed FitQuestions::agreed(WantedCorrection& wanted, const FitPreview& preview) const {
  say("On the pattern: " + preview.does + ".");
  for (const Problem& problem : preview.problems) {
    say("Mind, " + problem.where + ": " + refusal_of(problem));
  }
  while (const auto line = asked("Write it? (Enter: yes; no; or another amount)")) {
    if (line->empty() || is_yes(*line)) return Agreed::Yes;
    if (is_no(*line)) {
      say("Not written.");
      return Agreed::No;
    }
    if (amount_in(*line, wanted)) return Agreed::OtherAmount;
    say("yes, no, or another amount");
  }
  return Agreed::No;
}

}  // namespace blockwright
