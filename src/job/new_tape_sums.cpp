#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"
#include "blockwright/measure/tape_changes.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace blockwright {
namespace {

// Of the least amount of a row: less than this is nothing. Ours: half a millimetre of a waist.
constexpr double kLeastRest = 0.05;
// A small change of the tape is asked about too where it has more than this of what was asked.
// Ours.
constexpr double kMostUnasked = 0.5;
// An amount in a file is rounded by less.
constexpr Length kSameAmount = Length::mm(0.2);

/// A correction and what remains of it so far.
struct Part {
  TapeShare share;
  const Session* fitted_on = nullptr;
  double least = 0.0;  ///< of the measurement: less is not worth sewing

  [[nodiscard]] bool asks_for(double change) const { return share.remains * change > 0.0; }
};

std::optional<Measure> reading_of(const Session& session, MeasurementName name) {
  const auto& readings = session.tape[name];
  return readings ? std::optional(readings->median()) : std::nullopt;
}

/// The measurement that the correction asks to change; nothing where the file says what becomes of
/// the correction whatever the tape is.
std::optional<DoubtedMeasurement> asked_of(const Correction& correction, const RowAmount& amount) {
  if (correction.new_tape.answer == OnNewTape::Keep) return std::nullopt;
  return fitting_row(amount.row).doubts;
}

double asked_change(const DoubtedMeasurement& doubts, const RowAmount& amount) {
  return doubts.change(Length::mm(amount.sign * counted_amount(amount))).number();
}

std::optional<Part> part_of(const Client& client, const NumberedCorrection& numbered,
                            MeasurementName name) {
  const RowAmount amount = row_of(numbered.correction);
  const auto doubts = asked_of(numbered.correction, amount);
  const bool counts = doubts && doubts->name == name && amount.side == BodySide::Both;
  const Session* fitted_on = session_of_fitting(client, numbered.date);
  if (!counts || fitted_on == nullptr || !reading_of(*fitted_on, name)) return std::nullopt;
  const double asked = asked_change(*doubts, amount);
  const double least = std::abs(doubts->change(fitting_row(amount.row).amount.least).number());
  return Part{{numbered.number, asked, asked}, fitted_on, least};
}

/// Those that ask for a change that way, of which something remains.
std::vector<Part*> that_ask_for(double change, std::span<Part> parts) {
  std::vector<Part*> asking;
  for (Part& part : parts) {
    if (part.asks_for(change)) asking.push_back(&part);
  }
  return asking;
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

/// Takes a change off what the corrections ask for, oldest first; what it has of that.
double share_out(double change, std::span<Part> parts) {
  const std::vector<Part*> asking = that_ask_for(change, parts);
  double left = change;
  for (Part* part : asking) {
    double& remains = part->share.remains;
    const double covered = std::abs(left) < std::abs(remains) ? left : remains;
    remains -= covered;
    left -= covered;
  }
  hand_on_what_is_too_small(asking);
  return change - left;
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

/// What the tape changed by from toile to toile is shared out among the corrections of the toiles
/// before, which come first in the list.
std::vector<TapeStep> shared_steps(const BlockSource& source, MeasurementName name,
                                   std::vector<Part>& parts) {
  const std::vector<const Session*> sessions = sessions_of_toiles(source, parts);
  std::vector<TapeStep> steps;
  for (std::size_t i = 0; i + 1 < sessions.size(); ++i) {
    const Measure was = *reading_of(*sessions[i], name), is = *reading_of(*sessions[i + 1], name);
    const auto is_older = [&](const Part& part) {
      return part.fitted_on->date <= sessions[i]->date;
    };
    const auto older = static_cast<std::size_t>(std::ranges::count_if(parts, is_older));
    const double has = share_out((is - was).number(), std::span(parts).first(older));
    if (has != 0.0) steps.push_back({sessions[i], sessions[i + 1], was, is, measure_of(name, has)});
  }
  return steps;
}

std::optional<TapeSum> sum_of(const BlockSource& source,
                              const std::vector<NumberedCorrection>& corrections,
                              MeasurementName name) {
  std::vector<Part> parts;
  for (const NumberedCorrection& numbered : corrections) {
    if (auto part = part_of(source.client, numbered, name)) parts.push_back(*part);
  }
  if (!reading_of(source.session, name) || parts.empty()) return std::nullopt;
  std::ranges::stable_sort(parts, {}, [](const Part& part) { return part.fitted_on->date; });
  TapeSum sum{name, {}, shared_steps(source, name, parts)};
  std::erase_if(parts, [](const Part& part) { return part.share.remains == part.share.asked; });
  for (const Part& part : parts) sum.shares.push_back(part.share);
  return parts.empty() ? std::nullopt : std::optional(sum);
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

/// Whether the block is drafted from a newer tape than the toile that the correction was seen on.
bool has_newer_tape(const BlockSource& source, const NumberedCorrection& numbered) {
  const Session* fitted_on = session_of_fitting(source.client, numbered.date);
  return fitted_on != nullptr && fitted_on->date < source.session.date;
}

std::optional<OneSided> one_sided(const BlockSource& source, const NumberedCorrection& numbered) {
  const RowAmount amount = row_of(numbered.correction);
  const auto doubts = asked_of(numbered.correction, amount);
  if (!doubts || amount.side == BodySide::Both) return std::nullopt;
  if (numbered.correction.new_tape.answer != OnNewTape::Ask) return std::nullopt;
  if (!has_newer_tape(source, numbered)) return std::nullopt;
  const Session* fitted_on = session_of_fitting(source.client, numbered.date);
  const auto was = reading_of(*fitted_on, doubts->name),
             is = reading_of(source.session, doubts->name);
  if (!was || !is || tapes_differ_so({doubts->name, *is - *was})) return std::nullopt;
  const bool that_way = asked_change(*doubts, amount) * (*is - *was).number() > 0.0;
  if (!that_way) return std::nullopt;
  return OneSided{
      numbered.number, doubts->name, {fitted_on, &source.session, *was, *is, *is - *was}};
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

const Session* session_of_fitting(const Client& client, const std::string& date) {
  const Session* found = nullptr;
  for (const Session& session : client.sessions) {
    if (session.date < date || (found == nullptr && session.date == date)) found = &session;
  }
  return found;
}

std::vector<OneSided> one_sided_of_new_tape(const BlockSource& source,
                                            const std::vector<NumberedCorrection>& corrections) {
  std::vector<OneSided> found;
  for (const NumberedCorrection& numbered : corrections) {
    if (const auto one = one_sided(source, numbered)) found.push_back(*one);
  }
  return found;
}

std::vector<TapeSum> sums_of_new_tape(const BlockSource& source,
                                      const std::vector<NumberedCorrection>& corrections) {
  std::vector<TapeSum> sums;
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (auto sum = sum_of(source, corrections, entry.name)) sums.push_back(std::move(*sum));
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
    const auto found =
        std::ranges::find(corrections, share.correction, &NumberedCorrection::number);
    off += not_agreed(share, found->correction);
  }
  return measure_of(sum.name, off);
}

bool is_worth_asking(const TapeSum& sum, Measure not_agreed) {
  const bool is_much = not_agreed.number() > kMostUnasked * std::abs(sum.asked().number());
  return is_much || !tapes_differ_so({sum.name, not_agreed});
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
