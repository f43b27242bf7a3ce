#include "fit_choice.hpp"

#include "blockwright/base/printable.hpp"

#include <algorithm>

namespace blockwright {
namespace {

// Without the q that ends the questions.
constexpr std::string_view kLetters = "abcdefghijklmnoprstuvwxyz";

WantedCorrection wanted_of(const FitAnswer& answer, const TypedCorrection& typed) {
  WantedCorrection wanted;
  wanted.correction = answer.correction;
  wanted.words = answer.words;
  wanted.usual = answer.usual;
  wanted.amount = typed.amount;
  wanted.as = typed.as;
  wanted.side = typed.side;
  if (!wanted.side && answer.side != BodySide::Both) wanted.side = answer.side;
  return wanted;
}

/// "a", or "a 1.5 per half": the answer of that letter and what was said with it.
std::optional<WantedCorrection> by_letter(const std::string& line,
                                          const std::vector<FitAnswer>& answers) {
  const std::string letter = in_small_letters(line.substr(0, 1));
  const std::size_t number = letter.empty() ? kLetters.npos : kLetters.find(letter);
  const bool alone = line.size() == 1 || (line.size() > 1 && (line[1] == ' ' || line[1] == '.'));
  if (!alone || number == kLetters.npos || number >= answers.size()) return std::nullopt;
  const std::string rest = line.size() > 2 ? line.substr(2) : "";
  const TypedCorrection typed = correction_typed(answers[number].words + " " + rest);
  if (typed.place != answers[number].correction->place || !typed.odd.empty()) return std::nullopt;
  return wanted_of(answers[number], typed);
}

/// The words of any correction, among the answers or not.
std::optional<WantedCorrection> by_words(const std::string& line, Unit unit) {
  const TypedCorrection typed = correction_typed(line);
  const CorrectionWords* words = find_correction_words(typed.action, typed.place);
  if (words == nullptr || !typed.odd.empty()) return std::nullopt;
  for (const auto part : part_names()) {
    for (const FitAnswer& answer : answers_at(part, unit)) {
      if (answer.correction == words) return wanted_of(answer, typed);
    }
  }
  return std::nullopt;
}

/// What is typed behind an amount and no word for it: "furlong" of "a 1,5 furlong"; empty if all is
/// understood, or if it is no amount.
std::string odd_behind_amount(const std::string& words) {
  const TypedCorrection typed = correction_typed(words);
  const bool is_one = find_correction_words(typed.action, typed.place) != nullptr &&
                      amount_typed(typed.amount).has_value();
  return is_one ? typed.odd : "";
}

std::string refusal_of_odd(const std::string& odd) {
  return "\"" + shown(odd) +
         "\" is not understood: behind the amount may be its unit, cm, mm or in; how it was "
         "counted, \"each side\", \"altogether\", \"per half\"; left or right\n";
}

/// The same with the words of the answer for its letter.
std::string in_full(const std::string& line, const std::vector<FitAnswer>& answers) {
  const std::size_t number = line.empty() ? kLetters.npos : kLetters.find(small_letter(line[0]));
  const bool is_letter = line.size() > 2 && line[1] == ' ' && number < answers.size();
  return is_letter ? answers[number].words + line.substr(1) : line;
}

}  // namespace

std::optional<WantedCorrection> FitChoice::chosen(const std::string& line) const {
  if (auto wanted = by_letter(line, shown_)) return wanted;
  return by_words(line, unit_);
}

std::optional<WantedCorrection> FitChoice::hear(const std::string& line) {
  remark_.clear();
  if (auto wanted = chosen(line)) {
    if (!said_.empty()) wanted->seen = said_.back();
    if (!wanted->side) wanted->side = side_of(*wanted->correction);
    return wanted;
  }
  const std::string word = in_small_letters(line);
  if (word == "all") {
    show_all();
  } else if (word != "back" || said_.empty()) {  // at first it is the part of the body
    const std::string odd = odd_behind_amount(in_full(line, shown_));
    const bool is_seen = odd.empty() || !answers_to(line, unit_).best.empty();
    if (is_seen) {
      look_for(line);
    } else {
      remark_ = refusal_of_odd(odd);
    }
  } else if (said_.size() > 1) {
    said_.pop_back();
    const std::string before = said_.back();
    said_.pop_back();
    look_for(before);
  } else {
    said_.clear();
    shown_.clear();
    side_ = BodySide::Both;
  }
  return std::nullopt;
}

/// Of two faults each has its own, which goes with its letter.
std::optional<BodySide> FitChoice::side_of(const CorrectionWords& correction) const {
  const auto answer = std::ranges::find(shown_, &correction, &FitAnswer::correction);
  const BodySide side =
      answer != shown_.end() && answer->side != BodySide::Both ? answer->side : side_;
  return side == BodySide::Both ? std::nullopt : std::optional(side);
}

void FitChoice::show_all() {
  shown_.clear();
  for (const auto part : part_names()) {
    remark_ += std::string(part) + "\n";
    for (const FitAnswer& answer : answers_at(part, unit_)) {
      remark_ += "  " + name_text(answer.words) + "\n";
    }
  }
}

/// What was not understood is no part of what she saw.
bool FitChoice::finds_the_same(const FitAnswers& answers) const {
  return std::ranges::equal(answers.best, shown_, {}, &FitAnswer::correction,
                            &FitAnswer::correction);
}

void FitChoice::look_for(const std::string& line) {
  FitAnswers at_part;
  at_part.best = answers_at(line, unit_);
  at_part = for_her_block(std::move(at_part), lacking_);
  if (!at_part.best.empty() && at_part.best.size() <= kLetters.size()) {
    shown_ = at_part.best;
    remark_ = left_out_text(at_part);
    if (is_whole_) side_ = BodySide::Both;  // what was said before is done with
    said_.push_back(line);
    return;
  }
  FitAnswers answers = for_her_block(answers_to(line, unit_), lacking_);
  remark_ = not_found_text(answers);
  std::string all = line;
  if (!said_.empty() && !answers.is_whole) {  // more words narrow what was said before
    all = said_.back() + ", " + line;
    answers = for_her_block(answers_to(all, unit_), lacking_);
  }
  if (const std::string why = why_not_kept(all); !why.empty()) {
    remark_ = why + "; say it again\n";
    return;
  }
  if (answers.best.empty() || (!remark_.empty() && finds_the_same(answers))) return;
  shown_ = answers.best;
  is_whole_ = answers.is_whole;
  const bool is_of_all = std::ranges::all_of(
      shown_, [&](const FitAnswer& answer) { return answer.side == answers.side; });
  side_ = is_of_all ? answers.side : BodySide::Both;
  said_.push_back(all);
}

std::string lettered_text(const std::vector<FitAnswer>& answers) {
  std::vector<std::string> names;
  std::size_t width = 0;
  for (const FitAnswer& answer : answers) {
    const bool differs = std::ranges::any_of(
        answers, [&](const FitAnswer& other) { return other.side != answer.side; });
    const bool is_sided = differs && answer.side != BodySide::Both;
    names.push_back(name_text(answer.words) +
                    (is_sided ? ", " + std::string(side_word(answer.side)) : ""));
    width = std::max(width, names.back().size());
  }
  std::string text;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    const std::string pad(width - names[i].size(), ' ');
    text += std::string("  ") + kLetters[i] + "  " + names[i] + pad + "  " +
            std::string(answers[i].cure) + "\n";
  }
  return text;
}

std::string part_list() {
  std::string text;
  for (const auto name : part_names()) text += (text.empty() ? "" : ", ") + std::string(name);
  return text;
}

std::string_view cure_of_answer(const WantedCorrection& wanted) {
  for (const auto part : part_names()) {
    for (const FitAnswer& answer : answers_at(part, Unit::Cm)) {
      if (answer.correction == wanted.correction) return answer.cure;
    }
  }
  return {};
}

std::optional<AmountAs> way_meant(const std::string& line, const CorrectionWords& words) {
  std::string typed = in_small_letters(line);
  std::ranges::replace(typed, ' ', '_');
  std::optional<AmountAs> meant;
  for (const AmountAs as : words.readings) {
    if (!amount_way(as).word.starts_with(typed)) continue;
    if (meant) return std::nullopt;
    meant = as;
  }
  if (meant) return meant;
  const std::string correction = std::string(words.action) + " " + std::string(words.place);
  const TypedCorrection said = correction_typed(correction + " 1 " + line);  // "each side"
  const bool is_known = said.as && std::ranges::count(words.readings, *said.as) > 0;
  return is_known && said.odd.empty() ? said.as : std::nullopt;
}

}  // namespace blockwright
