#pragma once

#include "blockwright/job/fit_words.hpp"
#include "prompt.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What was answered about one correction.
struct WantedCorrection {
  const CorrectionWords* correction = nullptr;
  std::string words;   ///< "take_in waist"
  std::string usual;   ///< "1 cm on each half (0.5 to 3)"
  std::string amount;  ///< as typed; empty: not yet
  std::optional<AmountAs> as;
  std::optional<BodySide> side;
  std::string seen;
};

/// Where and when it is asked.
struct AskedOn {
  Prompt prompt;
  std::string today;
};

/// Whether a correction is to be written once it was said what it does.
enum class Agreed { Yes, No, OtherAmount };

/// The questions of a fitting at the prompt. Each answer is words; an empty one, or the end of the
/// input, leaves the question.
class FitQuestions {
 public:
  FitQuestions(const AskedOn& on, Unit unit) : prompt_(on.prompt), today_(on.today), unit_(unit) {}

  void introduce() const;
  void say(std::string_view sentence) const;

  /// What is seen, and which correction answers it; nothing: she is done. `seen` is asked for where
  /// it is empty.
  std::optional<WantedCorrection> correction(const std::string& seen) const;
  /// Asks for the amount, how it was read and the side, where they are missing. False: she leaves.
  bool complete(WantedCorrection& wanted) const;
  /// Asks for date and toile of the fitting where they are missing. False: she leaves.
  bool fitting(std::string& date, int& toile) const;
  /// Says why it was refused and asks for what was wrong, once more. False: she leaves.
  bool mended(WantedCorrection& wanted, const FitPreview& refused, FitJob& job) const;
  /// Says what it does, and asks whether to write it. Another amount is put into `wanted`.
  Agreed agreed(WantedCorrection& wanted, const FitPreview& preview) const;

 private:
  [[nodiscard]] std::optional<std::string> asked(const std::string& question) const;
  void show(const std::vector<FitAnswer>& answers) const;
  [[nodiscard]] bool ask_amount(WantedCorrection& wanted) const;
  [[nodiscard]] bool ask_way(WantedCorrection& wanted) const;
  [[nodiscard]] bool ask_side(WantedCorrection& wanted) const;
  [[nodiscard]] bool ask_toile(int& toile) const;

  Prompt prompt_;
  std::string today_;
  Unit unit_;
};

}  // namespace blockwright
