#include "wanted_correction.hpp"

namespace blockwright {
namespace {

/// So that it is asked again. What followed from the answer goes with it.
void forget(FitQuestion question, WantedCorrection& wanted) {
  switch (question) {
    case FitQuestion::Amount:
      wanted.amount.clear();
      wanted.as = std::nullopt;
      return;
    case FitQuestion::Way:
      wanted.as = std::nullopt;
      return;
    case FitQuestion::Side:
      wanted.side = std::nullopt;
      return;
    case FitQuestion::Date:
      wanted.fitting = {};
      return;
    case FitQuestion::Toile:
      wanted.fitting.toile = std::nullopt;
      return;
  }
}

}  // namespace

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

bool is_open(FitQuestion question, const WantedCorrection& wanted) {
  switch (question) {
    case FitQuestion::Amount:
      return wanted.amount.empty();
    case FitQuestion::Way:
      return !wanted.as && wanted.correction->must_say;
    case FitQuestion::Side:
      return !wanted.side && wanted.correction->one_sided;
    case FitQuestion::Date:
      return wanted.fitting.date.empty();
    case FitQuestion::Toile:
      return !wanted.fitting.toile;
  }
  return false;
}

bool forget_last(WantedCorrection& wanted) {
  if (wanted.answered.empty()) return false;
  forget(wanted.answered.back(), wanted);
  wanted.answered.pop_back();
  return true;
}

}  // namespace blockwright
