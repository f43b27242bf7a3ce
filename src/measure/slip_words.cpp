#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/likely_slips.hpp"
#include "blockwright/text/units.hpp"
#include "tape_error.hpp"

#include <algorithm>
#include <iterator>

namespace blockwright {
namespace {

// Ask for retaking beyond this.
constexpr double kRetakeSd = 4.5;

std::string slipped_key(const SlippedValue& value) { return std::string(info(value.name).key); }

std::string how_again(MeasurementName name) {
  return "take it again: " + std::string(info(name).how);
}

std::string how_rare(const LikelySlip& slip, bool retake) {
  if (retake) return "of 2,208 women hardly one was";
  return slip.fuller_waist ? "about 1 woman in 200 of 18 to 50 years is"
                           : "about 1 woman in 200 is";
}

Problem misread_problem(const LikelySlip& slip) {
  const MeasurementName name = slip.values.front().name;
  const bool retake = slip.off > kRetakeSd && !slip.fuller_waist;
  const double most = retake ? kRetakeSd : kDoubtfulSd;
  const Wording message =
      Wording(slip.values.front().read) + " was taped; the other measurements lead one to expect " +
      slip.expected + ", give or take " + slip.doubt + ". It is " + fixed(slip.off, 1) +
      " times that far off, and " + how_rare(slip, retake) + " more than " + trimmed(most, 1);
  std::string hint = how_again(name);
  if (slip.name == "loose") hint += " Draw the tape close, level at the back too.";
  return {.severity = slip.fuller_waist ? Severity::Note : Severity::Warning,
          .code = retake ? "measure.retake" : "measure.doubtful",
          .where = slipped_key(slip.values.front()),
          .message = message,
          .hint = hint + " If it comes out the same, it is right: look at the others",
          .measurements = {slipped_key(slip.values.front())},
          .limit = {.least = slip.expected - most * slip.doubt,
                    .most = slip.expected + most * slip.doubt}};
}

Problem cured_problem(const LikelySlip& slip) {
  const auto& [name, read, meant] = slip.values.front();
  return {.severity = Severity::Warning,
          .code = "measure.slip",
          .where = slipped_key(slip.values.front()),
          .message = Wording(read) + ": did you mean " + meant + " (" + slip.words +
                     ")? The other measurements lead one to expect " + slip.expected +
                     ", give or take " + slip.doubt,
          .hint = how_again(name),
          .measurements = {slipped_key(slip.values.front())},
          .limit = {.least = slip.expected - kDoubtfulSd * slip.doubt,
                    .most = slip.expected + kDoubtfulSd * slip.doubt}};
}

// "back waist length would be 36.7 cm, waist to hip 21.8 cm".
Wording meant_words(const LikelySlip& slip) {
  Wording words;
  for (const SlippedValue& value : slip.values) {
    words += (words.empty() ? "" : ", ") + name_text(info(value.name).key) +
             (words.empty() ? " would be " : " ");
    words += Wording(value.meant);
  }
  return words;
}

Problem common_problem(const LikelySlip& slip) {
  std::vector<std::string> keys;
  std::ranges::transform(slip.values, std::back_inserter(keys), slipped_key);
  std::string where;
  for (const std::string& key : keys) where += (where.empty() ? "" : ", ") + key;
  return {.severity = Severity::Warning,
          .code = "measure.slip",
          .where = where,
          .message = "it looks as if " + slip.words + ", by about " +
                     abs(slip.values.front().read - slip.values.front().meant) +
                     ". By the other measurements " + meant_words(slip),
          .hint = std::string(slip.cure) +
                  ". If they come out the same, they are right: look at the others",
          .measurements = keys};
}

}  // namespace

Problem problem_of(const LikelySlip& slip) {
  if (slip.values.size() > 1) return common_problem(slip);
  return slip.exact ? cured_problem(slip) : misread_problem(slip);
}

}  // namespace blockwright
