#include "block_pass.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "new_tape_in_full.hpp"
#include "new_tape_sums.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

using Corrections = std::vector<NumberedCorrection>;

// mm or degrees: what is added up leaves so much of nothing.
constexpr double kAsGoodAsNothing = 1e-6;

std::string exact_text(Measure measure, Unit unit) {
  const Measure size = abs(measure);
  return size.is_angle() ? angle_text(size.angle()) : amount_text(size.length(), unit);
}

const NumberedCorrection& numbered(const Corrections& corrections, std::size_t number) {
  return *std::ranges::find(corrections, number, &NumberedCorrection::number);
}

std::string named(const NumberedCorrection& numbered) {
  const Correction& correction = numbered.correction;
  const std::string side =
      correction.side == BodySide::Both ? "" : ", " + std::string(side_word(correction.side));
  return fmt::format("{} ({}{})", numbered.number,
                     name_text(correction.action + " " + correction.place), side);
}

std::string list_of(const std::vector<std::string>& words) {
  if (words.size() == 1) return words.front();
  return fmt::format("{} and {}", fmt::join(words.begin(), words.end() - 1, ", "), words.back());
}

/// "5 (take in waist) is now 3.25 cm in place of 3 cm": of the measurement, as the sum is counted,
/// whatever the amount was read as; of an angle as it was pinned.
std::string changed_words(const TapeSum& sum, const TapeShare& share,
                          const NumberedCorrection& numbered, Unit unit) {
  const Correction& correction = numbered.correction;
  const Length now = amount_to_apply({sum}, numbered);
  if (now == Length()) return "is left out";
  const Measure left = measure_of(sum.name, share.remains);
  if (left.is_angle()) {
    return fmt::format("is now {} in place of {}", amount_text(now, unit),
                       amount_text(correction.by, unit));
  }
  return fmt::format("is now {} in place of {}", exact_text(left, unit),
                     exact_text(measure_of(sum.name, share.asked), unit));
}

/// What becomes of each: first those that the tape has changed.
std::string shares_words(const TapeSum& sum, const Corrections& corrections, Unit unit) {
  std::vector<std::string> words, in_full;
  for (const TapeShare& share : sum.shares) {
    const NumberedCorrection& one = numbered(corrections, share.correction);
    if (amount_to_apply({sum}, one) == one.correction.by) {
      in_full.push_back(named(one));
      continue;
    }
    words.push_back(named(one) + " " + changed_words(sum, share, one, unit) +
                    (is_left_to_sum(one.correction) ? "" : ", as the file says"));
  }
  if (!in_full.empty()) {
    words.push_back(list_of(in_full) +
                    (in_full.size() == 1 ? " counts in full" : " count in full"));
  }
  for (const TapeShare& other : sum.others) {
    const NumberedCorrection& one = numbered(corrections, other.correction);
    words.push_back(fmt::format("{} goes by the {}", named(one),
                                words_of(asked_of(one.correction, row_of(one.correction))->name)));
  }
  return list_of(words);
}

std::string numbers_of(const TapeSum& sum) {
  std::vector<std::string> numbers;
  for (const TapeShare& share : sum.shares) numbers.push_back(std::to_string(share.correction));
  for (const TapeShare& share : sum.others) numbers.push_back(std::to_string(share.correction));
  return (numbers.size() == 1 ? "correction " : "corrections ") + list_of(numbers);
}

std::string taped_words(const std::optional<Measure>& taped, const Session& session, Unit unit) {
  return (taped ? exact_text(*taped, unit) : "not taped") + " on " + session.date;
}

/// "76.25 cm on 2026-01-10, 73.5 cm on 2026-07-12".
std::string step_words(const TapeStep& step, Unit unit) {
  return taped_words(step.was, *step.since, unit) + ", " + taped_words(step.is, *step.until, unit);
}

/// Where a tape is of the day of a fitting: ", after the fitting of that day".
std::string order_words(const TapeSum& sum, const Corrections& corrections) {
  const auto is_of_that_day = [&](const TapeShare& share) {
    return numbered(corrections, share.correction).date == sum.steps.back().until->date;
  };
  return std::ranges::any_of(sum.shares, is_of_that_day) ? ", after the fitting of that day" : "";
}

std::string steps_words(const TapeSum& sum, const BlockSource& source,
                        const Corrections& corrections) {
  std::vector<std::string> steps;
  for (const TapeStep& step : sum.steps) steps.push_back(step_words(step, source.unit));
  return fmt::format("{}{}", fmt::join(steps, "; "), order_words(sum, corrections));
}

/// "the newer tape has 2.75 cm of it (...)"; where the block does not go along with the measurement
/// alone, "the block from the newer tape has 0.3 cm of it (side length ...)".
std::string has_words(const TapeSum& sum, const BlockSource& source,
                      const Corrections& corrections) {
  const bool as_taped = std::ranges::all_of(sum.steps, &TapeStep::as_taped);
  return fmt::format("the {}newer tape has {} of it ({}{})", as_taped ? "" : "block from the ",
                     exact_text(sum.has(), source.unit),
                     as_taped ? "" : std::string(words_of(sum.name)) + " ",
                     steps_words(sum, source, corrections));
}

/// "2 cm less"; "nothing".
std::string way_words(Measure by, Unit unit) {
  if (abs(by).number() < kAsGoodAsNothing) return "nothing";
  return exact_text(by, unit) + (by.number() < 0.0 ? " less" : " more");
}

/// "6 cm less waist girth"; of corrections that pull both ways "3 cm less and 1 cm more waist
/// girth, together 2 cm less".
std::string asked_words(const TapeSum& sum, Unit unit) {
  double less = 0.0, more = 0.0;
  for (const auto* const shares : {&sum.shares, &sum.others}) {
    for (const TapeShare& share : *shares) (share.asked < 0.0 ? less : more) += share.asked;
  }
  if (less == 0.0 || more == 0.0) {
    return way_words(sum.asked(), unit) + " " + std::string(words_of(sum.name));
  }
  return fmt::format("{} and {} {}, together {}", way_words(measure_of(sum.name, less), unit),
                     way_words(measure_of(sum.name, more), unit), words_of(sum.name),
                     way_words(sum.asked(), unit));
}

/// "asked for 6 cm less waist girth; the newer tape has 2.75 cm of it (76.25 cm on 2026-01-10, 73.5
/// cm on 2026-07-12), and 3.25 cm remains: 2 (take in waist) is left out and 5 ...".
std::string sum_words(const TapeSum& sum, const BlockSource& source,
                      const Corrections& corrections) {
  const std::string asked = "asked for " + asked_words(sum, source.unit);
  const std::string shares = shares_words(sum, corrections, source.unit);
  if (sum.steps.empty()) {
    return fmt::format("{}; the newer tape no longer has what was settled: {}", asked, shares);
  }
  if (sum.has().number() == 0.0) {
    return fmt::format("{}; the newer tape takes nothing off that ({}): {}", asked,
                       steps_words(sum, source, corrections), shares);
  }
  const Measure remains = sum.remains();
  return fmt::format(
      "{}; {}, and {} remains: {}", asked, has_words(sum, source, corrections),
      abs(remains).number() < kAsGoodAsNothing ? "nothing" : exact_text(remains, source.unit),
      shares);
}

/// Numbers of the corrections that the sum decides on, and what it leaves of each.
std::vector<ExplainedDecision> decisions_in(const TapeSum& sum, const BlockSource& source,
                                            const Corrections& corrections) {
  std::vector<ExplainedDecision> decisions;
  for (const TapeShare& share : sum.shares) {
    const Correction& correction = numbered(corrections, share.correction).correction;
    if (!is_left_to_sum(correction)) continue;
    const Length left = as_written_in_file(remaining_amount(share, correction), source.client.unit);
    decisions.push_back({static_cast<int>(share.correction), {OnNewTape::Settled, left}});
  }
  return decisions;
}

std::vector<ExplainedSum> explained_in(const BlockSource& source) {
  const Corrections corrections = active_corrections(source.client, source.before_toile);
  std::vector<ExplainedSum> all;
  for (const TapeSum& sum : sums_of_new_tape(source, corrections)) {
    if (!is_worth_asking(sum, corrections)) continue;
    all.push_back({numbers_of(sum), sum_words(sum, source, corrections),
                   decisions_in(sum, source, corrections)});
  }
  return all;
}

/// What she can do about it.
std::string hint_of(const TapeSum& sum, bool asks) {
  if (asks) {
    return "sew a toile; where it shows the same again, write \"new_tape\": \"keep\" next to the "
           "correction. At a terminal `draft` and `fit --ask` ask, and write the answer";
  }
  if (sum.has().number() == 0.0) {
    return "what one correction gives and another takes back is in no tape; where one of them is "
           "no longer right, write \"new_tape\": \"drop\" next to it";
  }
  return "two tapes of one body may differ by so little, so you are not asked; to keep a "
         "correction "
         "as it was, write \"new_tape\": \"keep\" next to it";
}

Problem told_of(const TapeSum& sum, const BlockSource& source, const Corrections& corrections) {
  const bool asks = is_worth_asking(sum, corrections);
  return {.severity = asks ? Severity::Warning : Severity::Note,
          .code = "fit.explained",
          .where = numbers_of(sum),
          .message = sum_words(sum, source, corrections),
          .hint = hint_of(sum, asks),
          .measurements = {std::string(info(sum.name).key)}};
}

/// "1.2 cm more waist girth (74 cm on 2026-01-10, 75.2 cm on 2026-07-12)".
std::string taped_change_words(const InFull& one, Unit unit) {
  return fmt::format("{} {} {} ({})", exact_text(abs(one.step.has), unit),
                     one.step.has.number() < 0.0 ? "less" : "more", words_of(one.name),
                     step_words(one.step, unit));
}

/// "only 2 mm at the front side, and nothing at centre front and centre back".
std::string shown_words(const InFull& one, Unit unit) {
  std::vector<std::string> some, none;
  for (const Shown& shown : one.shown) {
    const std::string where = name_text(std::string(shown.length));
    const bool is_that_way = shown.by.number() * one.asked.number() > 0.0;
    if (is_that_way)
      some.push_back(value_text(abs(shown.by), unit) + " at the " + where);
    else
      none.push_back(where);
  }
  if (some.empty()) return "nothing at " + list_of(none);
  return "only " + list_of(some) + ", and nothing at " + list_of(none);
}

/// Why it is applied in full, and what speaks against it.
std::string why_in_full(const InFull& one, Unit unit) {
  const std::string taped =
      one.step.has.number() == 0.0
          ? fmt::format("{}: {}", words_of(one.name), step_words(one.step, unit))
          : "the tape has " + taped_change_words(one, unit);
  if (one.shown.empty()) return "no tape tells the sides apart; but " + taped;
  return fmt::format("of it the block from the newer tape has {}; {}", shown_words(one, unit),
                     taped);
}

Problem told_of(const InFull& one, const BlockSource& source, const Corrections& corrections) {
  const NumberedCorrection& correction = numbered(corrections, one.correction);
  return {
      .severity = Severity::Warning,
      .code = "fit.explained",
      .where = "correction " + std::to_string(one.correction),
      .message = named(correction) + " is applied in full, for " + why_in_full(one, source.unit),
      .hint =
          fmt::format("look at {} on the next toile. Then write next to it \"new_tape\": \"keep\", "
                      "\"drop\", or the amount that is still right",
                      one.shown.empty() ? "that side" : "it"),
      .measurements = {std::string(info(one.name).key)}};
}

/// A sum that leaves other amounts than were agreed to; and one that leaves all as it was, for some
/// take back what others give, until the file says what becomes of each.
bool is_to_be_told(const TapeSum& sum, const Corrections& corrections) {
  if (not_agreed(sum, corrections).number() != 0.0) return true;
  return sum.is_held && std::ranges::any_of(sum.shares, [&](const TapeShare& share) {
           const AfterNewTape& answer = numbered(corrections, share.correction).correction.new_tape;
           return answer.answer == OnNewTape::Ask;
         });
}

}  // namespace

Problems told_by_new_tape(const BlockSource& source) {
  const Corrections corrections = active_corrections(source.client, source.before_toile);
  Problems problems;
  for (const TapeSum& sum : sums_of_new_tape(source, corrections)) {
    if (!is_to_be_told(sum, corrections)) continue;
    problems.push_back(told_of(sum, source, corrections));
  }
  for (const InFull& one : in_full_after_new_tape(source, corrections)) {
    problems.push_back(told_of(one, source, corrections));
  }
  return problems;
}

std::vector<ExplainedSum> explained_sums(const Job& job, FileStore& files) {
  try {
    return explained_in(block_source(job, files));
  } catch (const Error&) {
    return {};
  }
}

void decide_explained(const std::string& client, const std::vector<ExplainedDecision>& decisions,
                      FileStore& files) {
  if (decisions.empty()) return;
  const std::string before = files.read(client);
  std::string text = before;
  for (const auto& [number, answer] : decisions) {
    text = with_new_tape({text, client}, static_cast<std::size_t>(number), answer);
  }
  in_its_place([&] { files.write_all({{client + ".bak", before}, {client, text}}); });
}

}  // namespace blockwright
