#include "new_tape_sums.hpp"

#include "blockwright/measure/correction_table.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace blockwright {
namespace {

// A change of the tape counts from this share of the smallest correction to that of all. Ours.
constexpr double kLeastShare = 0.5;
constexpr double kMostShare = 1.5;
// An amount in a file is rounded by less.
constexpr Length kSameAmount = Length::mm(0.2);

/// A correction and what remains of it so far.
struct Part {
  TapeShare share;
  const Session* fitted_on = nullptr;
  double least = 0.0;  ///< of the measurement: less is not worth sewing

  [[nodiscard]] bool asks_for(double change) const { return share.remains * change > 0.0; }
};

/// The session that the fitting's toile was drafted from: the newest that is not later.
const Session* session_before(const Client& client, const std::string& date) {
  const Session* found = nullptr;
  for (const Session& session : client.sessions) {
    if (session.date <= date) found = &session;
  }
  return found;
}

std::optional<Measure> reading_of(const Session& session, MeasurementName name) {
  const auto& readings = session.tape[name];
  return readings ? std::optional(readings->median()) : std::nullopt;
}

std::optional<Part> part_of(const Client& client, const NumberedCorrection& numbered,
                            MeasurementName name) {
  const RowAmount amount = row_of(numbered.correction);
  const FittingRow& row = fitting_row(amount.row);
  const bool counts = row.doubts && row.doubts->name == name && amount.side == BodySide::Both &&
                      numbered.correction.new_tape.answer != OnNewTape::Keep;
  const Session* fitted_on = session_before(client, numbered.date);
  if (!counts || fitted_on == nullptr || !reading_of(*fitted_on, name)) return std::nullopt;
  const Length by = Length::mm(amount.sign * counted_amount(amount));
  const double asked = row.doubts->change(by).number();
  const double least = std::abs(row.doubts->change(row.amount.least).number());
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

bool is_worth_sharing(double change, const std::vector<Part*>& asking) {
  double smallest = 0.0, sum = 0.0;
  for (const Part* part : asking) {
    const double remains = std::abs(part->share.remains);
    smallest = sum == 0.0 ? remains : std::fmin(smallest, remains);
    sum += remains;
  }
  return sum > 0.0 && std::abs(change) >= kLeastShare * smallest &&
         std::abs(change) <= kMostShare * sum;
}

/// What is left of a correction that is too small to sew goes to the next one.
void hand_on_what_is_too_small(const std::vector<Part*>& asking) {
  for (std::size_t i = 0; i < asking.size(); ++i) {
    double& left = asking[i]->share.remains;
    const bool touched = left != asking[i]->share.asked;
    if (!touched || std::abs(left) >= asking[i]->least) continue;
    if (i + 1 < asking.size()) asking[i + 1]->share.remains += left;
    left = 0.0;
  }
}

/// Shares a change out among the corrections, oldest first; false if it does not count.
bool share_out(double change, std::span<Part> parts) {
  const std::vector<Part*> asking = that_ask_for(change, parts);
  if (!is_worth_sharing(change, asking)) return false;
  double left = std::abs(change);
  for (Part* part : asking) {
    double& remains = part->share.remains;
    const double covered = std::fmin(left, std::abs(remains));
    remains -= std::copysign(covered, remains);
    left -= covered;
  }
  hand_on_what_is_too_small(asking);
  return true;
}

/// From session to session: what it changed is shared out among the corrections that were there
/// before it, which come first in the list.
void walk_sessions(const BlockSource& source, MeasurementName name, std::vector<Part>& parts) {
  std::optional<Measure> last;
  for (const Session& session : source.client.sessions) {
    const auto reading = reading_of(session, name);
    if (session.date > source.session.date || !reading) continue;
    const auto is_older = [&](const Part& part) { return part.fitted_on->date < session.date; };
    const auto older = static_cast<std::size_t>(std::ranges::count_if(parts, is_older));
    const bool shared =
        last && share_out((*reading - *last).number(), std::span(parts).first(older));
    const bool new_ones = std::ranges::any_of(
        parts, [&](const Part& part) { return part.fitted_on->date == session.date; });
    if (!last || shared || new_ones) last = reading;
  }
}

std::optional<TapeSum> sum_of(const BlockSource& source,
                              const std::vector<NumberedCorrection>& corrections,
                              MeasurementName name) {
  const auto now = reading_of(source.session, name);
  std::vector<Part> parts;
  for (const NumberedCorrection& numbered : corrections) {
    if (auto part = part_of(source.client, numbered, name)) parts.push_back(*part);
  }
  if (!now || parts.empty()) return std::nullopt;
  std::ranges::stable_sort(parts, {}, [](const Part& part) { return part.fitted_on->date; });
  walk_sessions(source, name, parts);
  std::erase_if(parts, [](const Part& part) { return part.share.remains == part.share.asked; });
  if (parts.empty()) return std::nullopt;
  const Session* since = parts.front().fitted_on;
  TapeSum sum{name, since, *reading_of(*since, name), *now, {}};
  for (const Part& part : parts) sum.shares.push_back(part.share);
  return sum;
}

/// As the file says, or as the sum does where the file says nothing or speaks of an older tape.
Length amount_to_apply(const TapeShare& share, const Correction& correction) {
  const auto& [answer, by] = correction.new_tape;
  if (answer == OnNewTape::Drop) return {};
  const bool as_written = answer == OnNewTape::Change && is_decided(share, correction);
  return as_written ? by : remaining_amount(share, correction);
}

}  // namespace

Measure TapeSum::asked() const {
  double all = 0.0;
  for (const TapeShare& share : shares) all += share.asked;
  return measure_of(name, all);
}

Measure TapeSum::remains() const {
  double all = 0.0;
  for (const TapeShare& share : shares) all += share.remains;
  return measure_of(name, all);
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

bool is_decided(const TapeShare& share, const Correction& correction) {
  const auto& [answer, by] = correction.new_tape;
  if (answer != OnNewTape::Change) return answer != OnNewTape::Ask;
  const Length off = by - remaining_amount(share, correction);
  return off < kSameAmount && -off < kSameAmount;
}

std::vector<NumberedCorrection> with_what_remains(std::vector<NumberedCorrection> corrections,
                                                  const std::vector<TapeSum>& sums) {
  for (NumberedCorrection& numbered : corrections) {
    const auto share = share_of(sums, numbered.number);
    if (!share) continue;
    numbered.before_new_tape = numbered.correction.by;
    numbered.correction.by = amount_to_apply(*share, numbered.correction);
    numbered.correction.given.clear();
  }
  std::erase_if(corrections, [](const NumberedCorrection& numbered) {
    return numbered.correction.by == Length();
  });
  return corrections;
}

}  // namespace blockwright
