#include "new_tape_in_full.hpp"

#include "blockwright/measure/tape_changes.hpp"
#include "drafted_lengths.hpp"
#include "new_tape_sums.hpp"

#include <algorithm>

namespace blockwright {
namespace {

/// How far the block moves the lengths that show the correction.
std::vector<Shown> shown_of(const TapeStep& step, const DoubtedMeasurement& doubts,
                            const RowAmount& amount, DraftedChanges& drafts) {
  const std::vector<LengthMoved> lengths = lengths_that_show(doubts, amount);
  const std::vector<double> drawn = drafts.changes(lengths, *step.since, *step.until);
  std::vector<Shown> shown;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    shown.push_back({lengths[i].name, measure_of(doubts.name, drawn[i])});
  }
  return shown;
}

/// Whether the file leaves it open what becomes of the correction, and a newer tape speaks of it.
bool is_open(const BlockSource& source, const NumberedCorrection& numbered,
             const std::optional<DoubtedMeasurement>& doubts) {
  return doubts && numbered.correction.new_tape.answer == OnNewTape::Ask &&
         has_newer_tape(source, numbered) && speaks_of(source.session, doubts->name);
}

std::optional<InFull> in_full(const BlockSource& source, const NumberedCorrection& numbered,
                              DraftedChanges& drafts) {
  const RowAmount amount = row_of(numbered.correction);
  const auto doubts = asked_of(numbered.correction, amount);
  if (!is_open(source, numbered, doubts)) return std::nullopt;
  TapeStep step =
      step_between(*session_of_fitting(source.client, numbered.date), source.session, doubts->name);
  step.has = measure_of(doubts->name, taped_change(step).value_or(0.0));
  const Measure asked = measure_of(doubts->name, asked_change(*doubts, amount));
  const auto is_that_way = [&](Measure by) { return by.number() * asked.number() > 0.0; };
  const auto is_much = [&](Measure by) {
    return is_that_way(by) && !tapes_differ_so({doubts->name, by});
  };
  std::vector<Shown> shown;
  if (amount.side == BodySide::Both) {
    shown = shown_of(step, *doubts, amount, drafts);
    if (std::ranges::all_of(shown, is_that_way, &Shown::by)) return std::nullopt;
  }
  if (!is_much(step.has) && std::ranges::none_of(shown, is_much, &Shown::by)) return std::nullopt;
  return InFull{numbered.number, step, doubts->name, asked, std::move(shown)};
}

}  // namespace

std::vector<InFull> in_full_after_new_tape(const BlockSource& source,
                                           const std::vector<NumberedCorrection>& corrections) {
  const std::vector<TapeSum> sums = sums_of_new_tape(source, corrections);
  DraftedChanges drafts(Ease::of(source.client));
  std::vector<InFull> found;
  for (const NumberedCorrection& numbered : corrections) {
    if (share_of(sums, numbered.number)) continue;
    if (auto one = in_full(source, numbered, drafts)) found.push_back(std::move(*one));
  }
  return found;
}

}  // namespace blockwright
