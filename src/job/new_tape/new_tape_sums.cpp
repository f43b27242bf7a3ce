#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "blockwright/measure/tape_changes.hpp"
#include "drafted_lengths.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
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
  MeasurementName name;
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

std::optional<Part> part_of(const Client& client, const NumberedCorrection& numbered) {
  const RowAmount amount = row_of(numbered.correction);
  const auto doubts = asked_of(numbered.correction, amount);
  const Session* fitted_on = session_of_fitting(client, numbered.date);
  if (!doubts || amount.side != BodySide::Both || fitted_on == nullptr) return std::nullopt;
  const double asked = asked_change(*doubts, amount);
  const double least = std::abs(doubts->change(fitting_row(amount.row).amount.least).number());
  const auto& [answer, by] = numbered.correction.new_tape;
  const double written = answer == OnNewTape::Change ? by / numbered.correction.by * asked : 0.0;
  return Part{doubts->name,
              {numbered.number, asked, asked},
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
  std::vector<Part> parts;  ///< all corrections that take part, by toile
  GivenAway given = {};
};

using Parts = std::vector<Part*>;

/// By how much what is left of a correction changes a measurement. A length that is put together
/// from several counts what was asked of itself alone.
double pull_of(const Part& part, MeasurementName name) {
  if (part.is_written()) return 0.0;
  if (part.name == name) return part.share.remains;
  const auto girth = girth_on_paper(name);
  if (!girth) return 0.0;
  const auto moved = std::ranges::find(part.moves, *girth, &LengthMoved::name);
  return moved == part.moves.end() ? 0.0 : part.share.remains * moved->per_mm;
}

/// What all corrections that were there ask for together of a measurement. What one gives and
/// another takes back again no tape has.
double together(MeasurementName name, const Parts& there) {
  double sum = 0.0;
  for (const Part* part : there) sum += pull_of(*part, name);
  return sum;
}

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
double taken_as_written(int way, const Parts& parts) {
  double taken = 0.0;
  for (Part* part : parts) {
    const double gone = part->share.remains - part->written;
    if (!part->is_written() || gone * way <= 0.0) continue;
    part->covered = that_way(part->change - taken, gone);
    taken += part->covered;
    part->share.remains = part->written;
  }
  return taken;
}

/// The corrections of a measurement that a step is shared out among, and all that were there.
struct Sharing {
  Parts parts;
  Parts there;
};

/// Takes off what the corrections ask for that way what the step has of each, oldest first, nothing
/// twice, and no more than all ask for together; what it has of all.
double share_out(int way, const Sharing& sharing) {
  double taken = taken_as_written(way, sharing.parts);
  Parts asking;
  for (Part* part : sharing.parts) {
    if (part->asks_for(way)) asking.push_back(part);
  }
  for (Part* part : asking) {
    const double left = that_way(together(part->name, sharing.there), part->share.remains);
    const double covered = that_way(part->change - taken, left);
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
std::vector<const Session*> sessions_of_toiles(const BlockSource& source, const Parts& parts) {
  std::vector<const Session*> sessions;
  for (const Part* part : parts) {
    const bool is_new = sessions.empty() || sessions.back()->date != part->fitted_on->date;
    if (is_new && part->fitted_on->date < source.session.date) sessions.push_back(part->fitted_on);
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
bool is_as_taped(const TapeStep& step, const Parts& parts) {
  const auto taped = taped_change(step);
  return taped && std::ranges::all_of(parts, [&](const Part* part) {
           return std::abs(part->change - *taped) < kAsTaped;
         });
}

/// Those that the step comes after.
Parts older_than(const TapeStep& step, const Parts& parts) {
  Parts older;
  for (Part* part : parts) {
    if (part->fitted_on->date <= step.since->date) older.push_back(part);
  }
  return older;
}

Parts pointers_to(std::vector<Part>& parts) {
  Parts all;
  for (Part& part : parts) all.push_back(&part);
  return all;
}

/// Whether the step went the way of a correction that is in full all the same, for others go the
/// other way.
bool is_held_by_others(const Part& part, const Parts& there) {
  const TapeShare& share = part.share;
  const bool went_so = part.change * share.asked > 0.0 && std::abs(part.change) >= kAsTaped;
  const double in_all = together(part.name, there);
  return went_so && !part.is_written() && share.remains == share.asked &&
         std::abs(that_way(in_all, share.asked)) + kAsTaped < std::abs(share.asked);
}

/// What changed from toile to toile is shared out among the corrections of the toiles before.
/// `sum` gets the steps that have some of them, or are against what others take back.
void share_steps(const BlockSource& source, const Parts& parts, Shared& shared, TapeSum& sum) {
  const std::vector<const Session*> sessions = sessions_of_toiles(source, parts);
  for (std::size_t i = 0; i + 1 < sessions.size(); ++i) {
    TapeStep step = step_between(*sessions[i], *sessions[i + 1], sum.name);
    const Sharing sharing{older_than(step, parts), older_than(step, pointers_to(shared.parts))};
    for (Part* part : sharing.parts) {
      part->change = change_of(*part, step, shared);
      part->covered = 0.0;
    }
    const bool is_held = std::ranges::any_of(
        sharing.parts, [&](const Part* part) { return is_held_by_others(*part, sharing.there); });
    const double has = share_out(1, sharing) + share_out(-1, sharing);
    for (const Part* part : sharing.parts) shared.given.add(step, *part);
    step.has = measure_of(sum.name, has);
    step.as_taped = is_as_taped(step, sharing.parts);
    if (has != 0.0 || is_held) sum.steps.push_back(step);
    sum.is_held |= is_held;
  }
}

/// The corrections that take part, by toile.
std::vector<Part> parts_of(const BlockSource& source,
                           const std::vector<NumberedCorrection>& corrections) {
  std::vector<Part> parts;
  for (const NumberedCorrection& numbered : corrections) {
    if (auto part = part_of(source.client, numbered)) parts.push_back(std::move(*part));
  }
  std::ranges::stable_sort(parts, {}, [](const Part& part) { return part.fitted_on->date; });
  return parts;
}

bool is_touched(const Part& part, const BlockSource& source) {
  const bool was_settled =
      part.answer == OnNewTape::Settled && part.fitted_on->date < source.session.date;
  return part.share.remains != part.share.asked || was_settled;
}

/// Of a sum that corrections pull both ways all are named, else those that the tape has changed.
void name_shares(const BlockSource& source, const Parts& parts, Shared& shared, TapeSum& sum) {
  const auto is_older = [&](const Part& part) {
    return part.fitted_on->date < source.session.date;
  };
  for (const Part* part : parts) {
    const bool counts = sum.is_held && is_older(*part) && !part->is_written();
    if (counts || is_touched(*part, source)) sum.shares.push_back(part->share);
  }
  if (!sum.is_held) return;
  for (const Part& other : shared.parts) {
    const double pull = pull_of(other, sum.name);
    if (other.name == sum.name || !is_older(other) || pull == 0.0) continue;
    sum.others.push_back({other.share.correction, pull, pull});
  }
}

std::optional<TapeSum> sum_of(const BlockSource& source, MeasurementName name, Shared& shared) {
  Parts parts;
  for (Part& part : shared.parts) {
    if (part.name == name) parts.push_back(&part);
  }
  if (parts.empty() || !speaks_of(source.session, name)) return std::nullopt;
  TapeSum sum{name};
  share_steps(source, parts, shared, sum);
  name_shares(source, parts, shared, sum);
  return sum.shares.empty() ? std::nullopt : std::optional(std::move(sum));
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
  for (const TapeShare& share : others) all += share.asked;
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
  for (const TapeShare& share : others) all += share.remains;
  return measure_of(name, all);
}

std::vector<TapeSum> sums_of_new_tape(const BlockSource& source,
                                      const std::vector<NumberedCorrection>& corrections) {
  Shared shared{DraftedChanges(Ease::of(source.client)), parts_of(source, corrections)};
  std::vector<TapeSum> sums;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (auto sum = sum_of(source, entry.name, shared)) sums.push_back(std::move(*sum));
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
