#pragma once

#include "fit_questions.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace blockwright {

/// The way from what is seen to a correction: words are heard, answers shown, more words narrow
/// them.
class FitChoice {
 public:
  /// Of a block without the darts at the places `lacking` nothing is shown there.
  explicit FitChoice(Unit unit, std::vector<std::string_view> lacking)
      : unit_(unit), lacking_(std::move(lacking)) {}

  /// In capital or small letters. A letter or the words of an answer, with or without an amount:
  /// that correction. "back": the answers before. "all": every part of the body. A part of the
  /// body: all that can be done there. All else is what is seen, with what was said before.
  std::optional<WantedCorrection> hear(const std::string& line);

  [[nodiscard]] bool has_answers() const { return !shown_.empty(); }
  [[nodiscard]] const std::vector<FitAnswer>& answers() const { return shown_; }
  /// What is to be said of the words that were heard last; may be empty.
  [[nodiscard]] const std::string& remark() const { return remark_; }

 private:
  [[nodiscard]] std::optional<WantedCorrection> chosen(const std::string& line) const;
  [[nodiscard]] std::optional<BodySide> side_of(const CorrectionWords& correction) const;
  [[nodiscard]] bool finds_the_same(const FitAnswers& answers) const;
  void look_for(const std::string& line);
  void show_all();

  Unit unit_;
  std::vector<std::string_view> lacking_;
  std::vector<std::string> said_;  ///< so far, each with what was said before it
  std::vector<FitAnswer> shown_;
  BodySide side_ = BodySide::Both;  ///< of all that is shown
  bool is_whole_ = false;           ///< a part of the body and what is seen there was said
  std::string remark_;
};

/// Answers with a letter before each.
std::string lettered_text(const std::vector<FitAnswer>& answers);
/// "neck, shoulder ..."
std::string part_list();
/// What the correction does.
std::string_view cure_of_answer(const WantedCorrection& wanted);
/// The way of reading an amount that begins with these words, or that they mean, "each side";
/// nothing if none does, or two.
std::optional<AmountAs> way_meant(const std::string& line, const CorrectionWords& words);

}  // namespace blockwright
