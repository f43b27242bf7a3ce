#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "blockwright/measure/tape_changes.hpp"
#include "drafted_lengths.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <span>
#include <string>
#include <string_view>

namespace blockwright {
namespace {

// Of the least amount of a row: less than this is nothing. Ours: half a millimetre of a waist.
constexpr double kLeastRest = 0.05;
// A small change of the tape is asked about too where it has more than this of what was asked.
// Ours.
constexpr double kMostUnasked = 0.5;
// An amount in a file is rounded by less.
constexpr Length kSameAmount = Length::mm(0.2);

// What a draft has within this is what the tape has. Ours: a step that no tape shows.
constexpr double kAsTaped = 0.5;
// mm: the solvers of a draft leave so much.
constexpr double kSolved = 0.02;

/// A correction and what remains of it so far.
struct Part {
  TapeShare share;
  const Session* fitted_on = nullptr;
  double least = 0.0;  ///< of the measurement: less is not worth sewing
  OnNewTape answer = OnNewTape::Ask;
  double written = 0.0;  ///< what the file leaves of it, where that decides
  /// What tells on paper how much of it is there, each for one of the measurement.
  std::vector<LengthMoved> shown_by;
  std::vector<LengthMoved> moves;  ///< all lengths that go back where it is left out
  double change = 0.0;             ///< what the step that is shared out has of it
  double covered = 0.0;            ///< ... and what was taken off for it

  [[nodiscard]] bool is_written() const {
    return answer == OnNewTape::Drop || answer == OnNewTape::Change;
  }
  /// Whether the step goes that way, and something remains to go that way.
  [[nodiscard]] bool asks_for(int way) const {
    return !is_written() && share.remains * way > 0.0 && change * way > 0.0;
  }
};

std::optional<Part> part_of(const Client& client, const NumberedCorrection& numbered,
                            MeasurementName name) {
  const RowAmount amount = row_of(numbered.correction);
  const auto doubts = asked_of(numbered.correction, amount);
  const bool counts = doubts && doubts->name == name && amount.side == BodySide::Both;
  const Session* fitted_on = session_of_fitting(client, numbered.date);
  if (!counts || fitted_on == nullptr) return std::nullopt;
  const double asked = asked_change(*doubts, amount);
  const double least = std::abs(doubts->change(fitting_row(amount.row).amount.least).number());
  const auto& [answer, by] = numbered.correction.new_tape;
  const double written = answer == OnNewTape::Change ? by / numbered.correction.by * asked : 0.0;
  return Part{{numbered.number, asked, asked},
              fitted_on,
              least,
              answer,
              written,
              lengths_that_show(*doubts, amount),
              lengths_moved(*doubts, amount)};
}

/// What steps have of lengths is given to corrections once, though they doubt several measurements.
class GivenAway {
 public:
  [[nodiscard]] double of(const TapeStep& step, std::string_view length) const {
    const auto found = mm_.find(key(step, length));
    return found == mm_.end() ? 0.0 : found->second;
  }
  void add(const TapeStep& step, const Part& part) {
    for (const LengthMoved& length : part.moves) {
      mm_[key(step, length.name)] += part.covered * length.per_mm;
    }
  }

 private:
  using Key = std::array<std::string, 3>;
  static Key key(const TapeStep& step, std::string_view length) {
    return {step.since->date, step.until->date, std::string(length)};
  }
  std::map<Key, double> mm_;
};

/// What the sums of all measurements share.
struct Shared {
  DraftedChanges drafts;
  GivenAway given = {};
};

/// What is left of a correction that is too small to sew goes to the next one.
void hand_on_what_is_too_small(const std::vector<Part*>& asking) {
  for (std::size_t i = 0; i < asking.size(); ++i) {
    double& left = asking[i]->share.remains;
    const bool touched = left != asking[i]->share.asked;
    if (!touched || std::abs(left) >= asking[i]->least) continue;
    if (i + 1 < asking.size()) {
      asking[i + 1]->share.remains += left;
      left = 0.0;
    } else if (std::abs(left) < kLeastRest * asking[i]->least) {
      left = 0.0;
    }
  }
}

/// As much of a change as goes that way, up to all of it.
double that_way(double change, double asked) {
  if (change * asked <= 0.0) return 0.0;
  return std::abs(change) < std::abs(asked) ? change : asked;
}

/// Of a step what the file says that it has of corrections; these are done with.
double taken_as_written(int way, std::span<Part> parts) {
  double taken = 0.0;
  for (Part& part : parts) {
    const double gone = part.share.remains - part.written;
    if (!part.is_written() || gone * way <= 0.0) continue;
    part.covered = that_way(part.change - taken, gone);
    taken += part.covered;
    part.share.remains = part.written;
  }
  return taken;
}

/// Takes off what the corrections ask for that way what the step has of each, oldest first and
/// nothing twice; what it has of all.
double share_out(int way, std::span<Part> parts) {
  double taken = taken_as_written(way, parts);
  std::vector<Part*> asking;
  for (Part& part : parts) {
    if (part.asks_for(way)) asking.push_back(&part);
  }
  for (Part* part : asking) {
    const double covered = that_way(part->change - taken, part->share.remains);
    if (covered * way <= 0.0) continue;
    part->share.remains -= covered;
    part->covered = covered;
    taken += covered;
  }
  hand_on_what_is_too_small(asking);
  return taken;
}

/// The sessions that toiles with these corrections were cut from, up to that of the draft, which
/// comes last.
std::vector<const Session*> sessions_of_toiles(const BlockSource& source,
                                               const std::vector<Part>& parts) {
  std::vector<const Session*> sessions;
  for (const Part& part : parts) {
    const bool is_new = sessions.empty() || sessions.back()->date != part.fitted_on->date;
    if (is_new && part.fitted_on->date < source.session.date) sessions.push_back(part.fitted_on);
  }
  sessions.push_back(&source.session);
  return sessions;
}

/// What a step has of a correction: what the block goes along by and is not given away, and the
/// tape where there is no block.
double change_of(const Part& part, const TapeStep& step, Shared& shared) {
  const auto taped = taped_change(step);
  std::vector<double> drawn = shared.drafts.changes(part.shown_by, *step.since, *step.until);
  if (drawn.empty()) return taped.value_or(0.0);
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    if (taped && std::abs(drawn[i] - *taped) < kSolved) drawn[i] = *taped;
    const auto& [name, per_one] = part.shown_by[i];
    drawn[i] -= shared.given.of(step, name) / per_one;
  }
  return common_change(drawn);
}

/// Whether the step has of these what the tape says.
bool is_as_taped(const TapeStep& step, std::span<const Part> parts) {
  const auto taped = taped_change(step);
  return taped && std::ranges::all_of(parts, [&](const Part& part) {
           return std::abs(part.change - *taped) < kAsTaped;
         });
}

/// What changed from toile to toile is shared out among the corrections of the toiles before, which
/// come first in the list.
std::vector<TapeStep> shared_steps(const BlockSource& source, MeasurementName name, Shared& shared,
                                   std::vector<Part>& parts) {
  const std::vector<const Session*> sessions = sessions_of_toiles(source, parts);
  std::vector<TapeStep> steps;
  for (std::size_t i = 0; i + 1 < sessions.size(); ++i) {
    TapeStep step = step_between(*sessions[i], *sessions[i + 1], name);
    const auto is_older = [&](const Part& part) {
      return part.fitted_on->date <= step.since->date;
    };
    const auto count = static_cast<std::size_t>(std::ranges::count_if(parts, is_older));
    const auto older = std::span(parts).first(count);
    for (Part& part : older) {
      part.change = change_of(part, step, shared);
      part.covered = 0.0;
    }
    const double has = share_out(1, older) + share_out(-1, older);
    for (const Part& part : older) shared.given.add(step, part);
    step.has = measure_of(name, has);
    step.as_taped = is_as_taped(step, older);
    if (has != 0.0) steps.push_back(step);
  }
  return steps;
}

/// The corrections of a measurement that take part, by toile.
std::vector<Part> parts_of(const BlockSource& source,
                           const std::vector<NumberedCorrection>& corrections,
                           MeasurementName name) {
  std::vector<Part> parts;
  if (!speaks_of(source.session, name)) return parts;
  for (const NumberedCorrection& numbered : corrections) {
    if (auto part = part_of(source.client, numbered, name)) parts.push_back(*part);
  }
  std::ranges::stable_sort(parts, {}, [](const Part& part) { return part.fitted_on->date; });
  return parts;
}

std::optional<TapeSum> sum_of(const BlockSource& source, std::vector<Part> parts,
                              MeasurementName name, Shared& shared) {
  TapeSum sum{name, {}, shared_steps(source, name, shared, parts)};
  for (const Part& part : parts) {
    const bool was_settled =
        part.answer == OnNewTape::Settled && part.fitted_on->date < source.session.date;
    if (part.share.remains != part.share.asked || was_settled) sum.shares.push_back(part.share);
  }
  return sum.shares.empty() ? std::nullopt : std::optional(sum);
}

/// Of the measurement.
double not_agreed(const TapeShare& share, const Correction& correction) {
  const auto& [answer, by] = correction.new_tape;
  if (answer == OnNewTape::Ask) return std::abs(share.asked - share.remains);
  if (answer != OnNewTape::Settled) return 0.0;
  const Length off = by - remaining_amount(share, correction);
  const bool is_same = off < kSameAmount && -off < kSameAmount;
  return is_same ? 0.0 : std::abs(off / correction.by * share.asked);
}

/// Whether a newer tape has most of what was agreed to remain of a correction.
bool is_mostly_gone(const TapeShare& share, const Correction& correction) {
  const auto& [answer, by] = correction.new_tape;
  if (answer != OnNewTape::Settled) return false;
  const Length left = remaining_amount(share, correction);
  return by - left >= kSameAmount && by - left > kMostUnasked * by;
}

const Correction& corrected_in(const TapeShare& share,
                               const std::vector<NumberedCorrection>& corrections) {
  return std::ranges::find(corrections, share.correction, &NumberedCorrection::number)->correction;
}

}  // namespace

Measure TapeSum::asked() const {
  double all = 0.0;
  for (const TapeShare& share : shares) all += share.asked;
  return measure_of(name, all);
}

Measure TapeSum::has() const {
  double all = 0.0;
  for (const TapeStep& step : steps) all += step.has.number();
  return measure_of(name, all);
}

Measure TapeSum::remains() const {
  double all = 0.0;
  for (const TapeShare& share : shares) all += share.remains;
  return measure_of(name, all);
}

std::vector<TapeSum> sums_of_new_tape(const BlockSource& source,
                                      const std::vector<NumberedCorrection>& corrections) {
  Shared shared{DraftedChanges(Ease::of(source.client))};
  std::vector<TapeSum> sums;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    auto parts = parts_of(source, corrections, entry.name);
    if (auto sum = sum_of(source, std::move(parts), entry.name, shared)) {
      sums.push_back(std::move(*sum));
    }
  }
  return sums;
}

Length remaining_amount(const TapeShare& share, const Correction& correction) {
  return share.remains / share.asked * correction.by;
}

std::optional<TapeShare> share_of(const std::vector<TapeSum>& sums, std::size_t correction) {
  for (const TapeSum& sum : sums) {
    const auto found = std::ranges::find(sum.shares, correction, &TapeShare::correction);
    if (found != sum.shares.end()) return *found;
  }
  return std::nullopt;
}

Measure not_agreed(const TapeSum& sum, const std::vector<NumberedCorrection>& corrections) {
  double off = 0.0;
  for (const TapeShare& share : sum.shares) {
    off += not_agreed(share, corrected_in(share, corrections));
  }
  return measure_of(sum.name, off);
}

bool is_worth_asking(const TapeSum& sum, const std::vector<NumberedCorrection>& corrections) {
  const Measure off = not_agreed(sum, corrections);
  const bool is_gone = std::ranges::any_of(sum.shares, [&](const TapeShare& share) {
    return is_mostly_gone(share, corrected_in(share, corrections));
  });
  const bool is_much = off.number() > kMostUnasked * std::abs(sum.asked().number());
  return is_gone || is_much || !tapes_differ_so({sum.name, off});
}

bool is_left_to_sum(const Correction& correction) {
  const OnNewTape answer = correction.new_tape.answer;
  return answer == OnNewTape::Ask || answer == OnNewTape::Settled;
}

Length amount_to_apply(const std::vector<TapeSum>& sums, const NumberedCorrection& numbered) {
  const auto& [answer, by] = numbered.correction.new_tape;
  if (answer == OnNewTape::Drop) return {};
  if (answer == OnNewTape::Change) return by;
  const auto share = share_of(sums, numbered.number);
  return share ? remaining_amount(*share, numbered.correction) : numbered.correction.by;
}

std::vector<NumberedCorrection> with_what_remains(const BlockSource& source,
                                                  std::vector<NumberedCorrection> corrections) {
  const std::vector<TapeSum> sums = sums_of_new_tape(source, corrections);
  for (NumberedCorrection& numbered : corrections) {
    if (!has_newer_tape(source, numbered)) continue;
    const Length now = amount_to_apply(sums, numbered);
    if (now == numbered.correction.by) continue;
    numbered.before_new_tape = numbered.correction.by;
    numbered.correction.by = now;
    numbered.correction.given.clear();
  }
  std::erase_if(corrections, [](const NumberedCorrection& numbered) {
    return numbered.correction.by == Length();
  });
  return corrections;
}

}  // namespace blockwright
