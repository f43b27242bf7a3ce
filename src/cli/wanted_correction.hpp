#pragma once

#include "blockwright/job/fit_words.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What is asked about one correction, in this order.
enum class FitQuestion { Amount, Way, Side, Date, Toile };
inline constexpr std::array kFitQuestions{FitQuestion::Amount, FitQuestion::Way, FitQuestion::Side,
                                          FitQuestion::Date, FitQuestion::Toile};

/// How much, as it was answered.
struct WantedAmount {
  std::string amount;
  std::optional<AmountAs> as;
  std::optional<BodySide> side;

  bool operator==(const WantedAmount&) const = default;
};

/// What was answered about one correction.
struct WantedCorrection {
  const CorrectionWords* correction = nullptr;
  std::string words;   ///< "take_in waist"
  std::string usual;   ///< "1 cm on each half (0.5 to 3)"
  std::string amount;  ///< as typed; empty: not yet
  std::optional<AmountAs> as;
  std::optional<BodySide> side;
  std::string seen;
  FittingName fitting;                      ///< that it goes to
  std::vector<FitQuestion> answered;        ///< so far, the last one last
  std::optional<WantedAmount> judged = {};  ///< by her block
};

/// The amount of an answer such as "2", "5/8 in" or "2 whole girth", kept in what is wanted with
/// the way and the side that were given with it; nothing if it is none.
std::optional<TypedAmount> amount_in(std::string_view answer, WantedCorrection& wanted);

/// Whether it has no answer yet, and needs one.
bool is_open(FitQuestion question, const WantedCorrection& wanted);
/// Takes the last answer back, with what followed from it. False: there was none.
bool forget_last(WantedCorrection& wanted);

}  // namespace blockwright
