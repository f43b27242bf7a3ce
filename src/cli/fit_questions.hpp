#pragma once

#include "blockwright/job/fit_words.hpp"
#include "prompt.hpp"
#include "wanted_correction.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

class FitChoice;

/// Of whom, where and when it is asked.
struct AskedOn {
  Prompt prompt;
  std::string today;
  std::string client;  ///< path of the client file
  FileStore& files;
  std::optional<Unit> unit = {};  ///< of the run; else that of the file
  /// What a correction would do, on any day where the fitting is not known yet.
  std::function<FitPreview(const WantedCorrection&)> preview = {};
};

/// What follows from an answer.
enum class GoesOn { Next, Back, Leave };

/// Whether a correction is to be written once it was said what it does.
enum class Agreed { Yes, No, OtherAmount, Back };

/// The questions of a fitting at the prompt. Each answer is words, in capital or small letters, and
/// is judged when it is typed; "back" goes to the question before; an empty one, "done" or "quit",
/// or the end of the input, leaves the question.
class FitQuestions {
 public:
  explicit FitQuestions(const AskedOn& on)
      : prompt_(on.prompt),
        today_(on.today),
        client_(on.client),
        files_(on.files),
        file_unit_(unit_of_client(on.client, on.files)),
        unit_(on.unit.value_or(file_unit_)),
        preview_(on.preview) {}

  [[nodiscard]] Unit unit() const { return unit_; }
  void introduce() const;
  void say(std::string_view sentence) const;

  /// What is seen, and which correction answers it; nothing: she is done. It is asked for where
  /// `choice` has heard nothing yet.
  std::optional<WantedCorrection> correction(FitChoice& choice) const;
  /// Asks for the amount, how it was read, the side and the fitting, where they are missing. What
  /// her block does not take is asked again before the fitting is asked for. Back: to the
  /// corrections.
  GoesOn complete(WantedCorrection& wanted) const;
  /// Says why it was refused and asks for what was wrong, once more.
  GoesOn mended(WantedCorrection& wanted, const FitPreview& refused) const;
  /// Asks once more what was asked last.
  GoesOn asked_again(WantedCorrection& wanted) const;
  /// Says what it does, and asks whether to write it. Another amount is put into `wanted`.
  Agreed agreed(WantedCorrection& wanted, const FitPreview& preview) const;
  /// The amount for --add, which takes a number without a unit for one of the file's.
  [[nodiscard]] std::string amount_to_add(const WantedCorrection& wanted) const;
  /// "fuller one breast 1/2 in, left, toile 1 of 2026-03-28".
  [[nodiscard]] std::string in_words(const WantedCorrection& wanted) const;

 private:
  [[nodiscard]] std::optional<std::string> asked(const std::string& question) const;
  [[nodiscard]] std::optional<std::string> needed(const std::string& question) const;
  void show(const std::vector<FitAnswer>& answers) const;
  void forget_wrong_way(WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask(FitQuestion question, WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_amount(WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn judge_amount(const TypedAmount& amount, WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_unit(WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_way(WantedCorrection& wanted) const;
  [[nodiscard]] std::optional<GoesOn> other_amount(const std::string& answer,
                                                   WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_side(WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_date(WantedCorrection& wanted) const;
  [[nodiscard]] GoesOn ask_toile(WantedCorrection& wanted) const;

  Prompt prompt_;
  std::string today_;
  std::string client_;
  FileStore& files_;
  Unit file_unit_;
  Unit unit_;  ///< that is asked in
  std::function<FitPreview(const WantedCorrection&)> preview_;
};

}  // namespace blockwright
