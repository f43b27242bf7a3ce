#include "most_taken.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/text/units.hpp"
#include "new_tape_sums.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using Corrections = std::vector<NumberedCorrection>;

BlockRun applied_to(BlockRun run, const Corrections& corrections) {
  run.corrections = with_what_remains(run, corrections);
  std::vector<Correction> plain;
  plain.reserve(run.corrections.size());
  for (const NumberedCorrection& numbered : run.corrections) plain.push_back(numbered.correction);
  run.fitted = apply_corrections(run.block.pattern, plain);
  return run;
}

Corrections first_of(const Corrections& all, std::size_t count) {
  return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count)};
}

/// Told with the client file and the most that is taken of it.
[[noreturn]] void refuse_last(const BlockRun& drafted, const Corrections& corrections,
                              const Problem& refusal) {
  Problem problem = worded(refusal, drafted.unit);
  problem.where = drafted.file + ": fittings: " + problem.where;
  if (const auto most = most_taken(drafted, corrections)) {
    problem.hint += "; this block takes up to \"" +
                    words_with_amount(corrections.back().correction, *most, drafted.unit) + "\"";
  }
  throw InputError(problem);
}

/// The shortest beginning of the list that is refused is refused for its last correction.
void refuse_first_refused(const BlockRun& drafted, const Corrections& corrections) {
  for (std::size_t count = 1; count <= corrections.size(); ++count) {
    const Corrections first = first_of(corrections, count);
    try {
      (void)applied_to(drafted, first);
    } catch (const InputError& error) {
      refuse_last(drafted, first, error.problem());
    }
  }
}

}  // namespace

BlockRun with_corrections(const BlockRun& drafted, const Corrections& corrections) {
  try {
    return applied_to(drafted, corrections);
  } catch (const InputError&) {
    refuse_first_refused(drafted, corrections);
    throw;
  }
}

bool takes(const BlockRun& drafted, const Corrections& corrections) {
  try {
    return !has_errors(check_pattern(applied_to(drafted, corrections).fitted.pattern));
  } catch (const InputError&) {
    return false;
  }
}

std::optional<Length> most_taken(const BlockRun& drafted, Corrections corrections) {
  Correction& last = corrections.back().correction;
  const Length step = printed_step(drafted.unit), asked = last.by;
  const auto is_taken = [&](double steps) {
    last.by = steps * step;
    return takes(drafted, corrections);
  };
  double most = 0.0, over = std::ceil(asked / step);
  while (over - most > 1.0) {
    const double middle = std::floor(0.5 * (most + over));
    (is_taken(middle) ? most : over) = middle;
  }
  return most > 0.0 ? std::optional(most * step) : std::nullopt;
}

std::string words_with_amount(const Correction& correction, Length by, Unit unit) {
  const CorrectionWords& words = *find_correction_words(correction.action, correction.place);
  std::string text = fmt::format("{} {} {}", name_text(correction.action),
                                 name_text(correction.place), amount_text(by, unit));
  if (words.readings.size() > 1) text += " " + way_text(words, correction.as);
  if (correction.side != BodySide::Both) text += " " + std::string(side_word(correction.side));
  return text;
}

}  // namespace blockwright
