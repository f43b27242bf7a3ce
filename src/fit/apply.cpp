#include "blockwright/fit/apply.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "halves.hpp"
#include "hollows.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <tuple>

namespace blockwright {
namespace {

// A length that changed by less has not moved, in mm.
constexpr double kMoved = 0.005;
// A dart that grew by more was widened, in mm.
constexpr double kHardlyWider = 0.5;
// A law is met within this, in mm; a ratio within this share.
constexpr double kForecast = 0.5, kRatio = 0.3;
// A turn of the joined neckline that counts.
constexpr Angle kSmoothNeck = Angle::degrees(0.01);
// A sum of less, in mm, is what rounding leaves of opposite corrections that cancel.
constexpr double kNothing = 1e-6;
// A toile is at most so many times the usual most of a row off; within it every row decides for
// itself. Ours: twice the most leaves no measurement unquestioned, and beyond three no garment.
constexpr double kMostTimes = 3.0;
// What the fitter watches moves by what she pinned, or the correction is refused, in mm. Ours: more
// is seen on the body.
constexpr double kMostMissed = 1.0;

[[noreturn]] void refuse(const char* code, const std::string& where, const Wording& message,
                         const Wording& hint) {
  throw InputError({Severity::Error, code, where, message, hint});
}

// "front_shoulder_dart" and so on, of rows that serve several places.
std::string place_of(const RowAmount& amount) {
  const std::string_view usual = fitting_row(amount.row).traits.usual_place;
  return usual.empty() || amount.place.empty() ? std::string(usual) : amount.place;
}

std::string where_of(CorrectionRow row) { return "row " + std::to_string(number_of(row)); }

void require_sound(const RowAmount& amount) {
  const bool known = amount.row > CorrectionRow{} && amount.row < CorrectionRow::NoRow;
  if (!known || (amount.sign != 1 && amount.sign != -1)) {
    refuse("fit.unknown", where_of(amount.row), "there is no such row in the fitting catalogue",
           "rows are 1 to " + std::to_string(kCorrectionCount));
  }
  if (!std::isfinite(amount.by) || amount.by < 0.0) {
    refuse("fit.amount", where_of(amount.row), "the amount is not a number from 0 up",
           "the direction is said in words: lower or raise, take in or let out");
  }
  if (fitting_row(amount.row).stage == kOneSideStage && amount.side == BodySide::Both) {
    refuse("fit.side_missing", where_of(amount.row),
           "this is a correction for one side of the body", "say left or right");
  }
}

// The moves for the sides asked for, in the row's own direction.
RowMoves moves_for(const RowAmount& amount) {
  const auto other = fitting_row(amount.row).traits.on_one_side;
  RowMoves moves =
      moves_of(amount.side == BodySide::Both ? amount.row : other.value_or(amount.row));
  moves.sign = moves_of(amount.row).sign;
  return moves;
}

// One row asked for, with all amounts of its kind added.
struct Job {
  Effect effect;
  RowMoves moves;
  std::string place;
  Hollows hollows{};  ///< what it changed of them

  [[nodiscard]] RowAsk ask() const { return {moves.sign * effect.by, place}; }
  // What makes corrections one: their amounts are added.
  [[nodiscard]] auto key() const {
    return std::tuple(moves.apply, place, effect.stage, effect.side);
  }
};

Job job_of(const RowAmount& amount, std::size_t correction) {
  require_sound(amount);
  return {{{correction},
           amount.row,
           fitting_row(amount.row).stage,
           amount.side,
           amount.sign * counted_amount(amount),
           {},
           amount.given,
           amount.place},
          moves_for(amount),
          place_of(amount),
          {}};
}

void require_moderate(const Effect& effect) {
  const double most = kMostTimes * fitting_row(effect.row).amount.most.mm();
  if (std::abs(effect.by) <= most + kNothing) return;
  refuse_fit("fit.amount", "no toile is so far off", "look at the amount and its unit");
}

std::vector<Job> jobs_of(const std::vector<RowAmount>& rows) {
  std::vector<Job> jobs;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Job job = job_of(rows[i], i);
    const auto same = std::ranges::find(jobs, job.key(), &Job::key);
    if (same == jobs.end()) {
      jobs.push_back(job);
      continue;
    }
    same->effect.corrections.push_back(i);
    same->effect.given.clear();
    same->effect.by += job.effect.by * job.moves.sign * same->moves.sign;
  }
  std::ranges::stable_sort(jobs, {}, [](const Job& job) { return job.effect.stage; });
  return jobs;
}

MovedLength compared(const std::vector<FitLength>& before, const FitLength& is) {
  const auto was = std::ranges::find(before, is.name, &FitLength::name);
  return {is.name, was == before.end() ? 0.0 : was->mm, is.mm, std::nullopt, false};
}

// What the row promises: what the fitter watches, and its other laws.
std::vector<Law> laws_of(const HalfBlock& before, const Job& job) {
  std::vector<Law> laws;
  for (const LengthMoved& length : watched_at(job.effect.row, job.place).lengths) {
    laws.push_back({std::string(length.name), length.per_mm * job.effect.by});
  }
  std::ranges::move(job.moves.laws(before, job.ask()), std::back_inserter(laws));
  return laws;
}

// A law of a whole girth holds for both halves; one half alone makes half of it.
void predict(MovedLength& length, const std::vector<Law>& laws, BodySide side) {
  const auto law = std::ranges::find(laws, length.name, &Law::name);
  if (law == laws.end()) return;
  const bool half = side != BodySide::Both && is_whole(law->name);
  length.predicted = half ? 0.5 * law->change : law->change;
  length.sample = law->kind != LawKind::Exact;
}

bool is_worth_telling(const MovedLength& length) {
  return std::abs(length.change()) > kMoved || (length.predicted && *length.predicted != 0.0);
}

double neck_corner(const Opened& open) {
  const Path& neckline = open.edges[index_of(BlockEdge::Neckline)].stretches.front();
  return turn_between(start_tangent(neckline), shoulder_at_neck(open)).radians();
}

// Where the front neckline gave up a part of its right angle at the shoulder, the back's takes it
// up, so that the joined neckline stays smooth.
void smooth_neck(const Redrawn& half, Opened& back) {
  const auto corners = [](const HalfBlock& of) {
    return neck_corner(of.front) + neck_corner(of.back);
  };
  const double off = corners(half.after) - corners(half.before);
  if (std::abs(off) < kSmoothNeck.radians()) return;
  Redrawing work(half.after.back);
  work.turn_start(kNeckline, Angle::radians(off));
  back = work.finished();
}

// Where a piece has no more to give, what was pinned would come about in part, without a word.
void require_as_pinned(const Job& job) {
  for (const LengthMoved& watched : watched_at(job.effect.row, job.place).lengths) {
    const auto moved = std::ranges::find(job.effect.moved, watched.name, &MovedLength::name);
    if (moved == job.effect.moved.end()) continue;
    const double change = moved->change(), asked = *moved->predicted;
    if (std::abs(change - asked) <= kMostMissed) continue;
    refuse_fit("fit.amount", "only a part of it would come about", "give a smaller amount");
  }
}

HalfBlock applied(const HalfBlock& half, const Job& job) {
  HalfBlock result = half;
  job.moves.apply(result, job.ask());
  smooth_neck({half, result}, result.back);
  require_possible({half, result});
  return result;
}

void carry_out(Halves& halves, Job& job) {
  const BodySide side = job.effect.side;
  if (std::abs(job.effect.by) < kNothing) return;
  require_moderate(job.effect);
  job.effect.moved.clear();
  if (side != BodySide::Both && halves.alike()) halves.own_left = halves.right;
  HalfBlock& left = halves.alike() ? halves.right : *halves.own_left;
  HalfBlock& here = side == BodySide::Left ? left : halves.right;
  HalfBlock& there = &here == &left ? halves.right : left;
  const auto before = fit_lengths(here, there);
  const Hollows hollows = hollows_of(here);
  const std::vector<Law> laws = laws_of(here, job);
  here = applied(here, job);
  if (side == BodySide::Both && !halves.alike()) there = applied(there, job);
  job.hollows = hollows_of(here) - hollows;
  for (const FitLength& is : fit_lengths(here, there)) {
    MovedLength length = compared(before, is);
    predict(length, laws, side);
    if (is_worth_telling(length)) job.effect.moved.push_back(length);
  }
  require_as_pinned(job);
}

// A refusal from within names row and amount here, and the measurement that the row doubts.
void carry_out_named(Halves& halves, Job& job) {
  try {
    carry_out(halves, job);
  } catch (const InputError& error) {
    Problem problem = error.problem();
    problem.where = words_of(job.effect);
    problem.message = amount_words(job.effect) + ": " + problem.message;
    const auto& doubts = fitting_row(job.effect.row).doubts;
    if (doubts && problem.measurements.empty()) {
      problem.measurements.emplace_back(info(doubts->name).key);
      problem.hint += "; or take " + tape_words(doubts->name) + " again and draft anew";
    }
    throw InputError(problem);
  }
}

/// All lengths of a half, as drafted and by now. Both halves are drafted alike.
std::vector<MovedLength> lengths_of(const HalfBlock& drafted, const HalfBlock& half,
                                    const HalfBlock& other) {
  const auto before = fit_lengths(drafted, drafted);
  std::vector<MovedLength> lengths;
  for (const FitLength& is : fit_lengths(half, other)) lengths.push_back(compared(before, is));
  return lengths;
}

// Of a dart that grew too wide: "take in front neck edge; fuller bust: the dart grew ...".
void name_what_widened(const std::vector<Job>& jobs, Problem& problem) {
  std::string names;
  for (const Job& job : jobs) {
    const auto& moved = job.effect.moved;
    const auto dart = std::ranges::find(moved, problem.where + " dart", &MovedLength::name);
    if (dart == moved.end() || dart->change() <= kHardlyWider) continue;
    names += (names.empty() ? "" : "; ") + words_of(job.effect);
  }
  if (!names.empty()) problem.message = names + ": " + problem.message;
}

// What is to be said of a half by now, against what was drafted.
Problems judge(const Redrawn& half, const std::vector<Job>& jobs) {
  std::vector<HollowChange> changes;
  changes.reserve(jobs.size());
  for (const Job& job : jobs) changes.push_back({words_of(job.effect), job.hollows});
  Problems problems = judge_half(half);
  for (Problem& problem : problems) {
    if (problem.code == "fit.limit") name_what_widened(jobs, problem);
  }
  std::ranges::copy(judge_hollows(half, changes), std::back_inserter(problems));
  return problems;
}

void add(Problems& problems, const Problems& more) {
  for (const Problem& problem : more) {
    if (std::ranges::count(problems, problem) == 0) problems.push_back(problem);
  }
}

// The rows of corrections that are not withdrawn, and their places in the list.
struct ActiveRows {
  std::vector<RowAmount> rows;
  std::vector<std::size_t> kept;
};

ActiveRows active_rows(const std::vector<Correction>& corrections) {
  ActiveRows active;
  for (std::size_t i = 0; i < corrections.size(); ++i) {
    if (corrections[i].withdrawn) continue;
    active.rows.push_back(row_of(corrections[i]));
    active.kept.push_back(i);
  }
  return active;
}

}  // namespace

std::optional<double> forecast_of(const MovedLength& moved) {
  if (!moved.predicted) return std::nullopt;
  const double law = *moved.predicted, off = std::abs(moved.change() - law);
  const double most = moved.sample ? std::fmax(kForecast, kRatio * std::abs(law)) : kForecast;
  return off <= most ? moved.predicted : std::nullopt;
}

double counted_amount(const RowAmount& amount) {
  const RowTraits& traits = fitting_row(amount.row).traits;
  const bool once = traits.at_centre_line || traits.along_a_seam;
  switch (amount.as) {
    case AmountAs::TuckDepth:
    case AmountAs::PerSeam:
      return once ? amount.by : 2.0 * amount.by;
    case AmountAs::WholeGirth:
      return 0.5 * amount.by;
    case AmountAs::Length:
    case AmountAs::PerHalf:
      return amount.by;
  }
  return amount.by;
}

Halves fitted_halves(const Pattern& block, const std::vector<Correction>& corrections) {
  std::vector<Job> jobs = jobs_of(active_rows(corrections).rows);
  Halves halves = halves_of(block);
  for (Job& job : jobs) carry_out_named(halves, job);
  return halves;
}

FittedPattern apply_rows(const Pattern& block, const std::vector<RowAmount>& rows) {
  std::vector<Job> jobs = jobs_of(rows);
  const Halves drafted = halves_of(block);
  Halves halves = drafted;
  for (Job& job : jobs) carry_out_named(halves, job);
  FittedPattern fitted;
  for (const Job& job : jobs) fitted.effects.push_back(job.effect);
  fitted.remarks =
      judge_together(fitted.effects, closed_length(drafted.right.front, BlockEdge::Shoulder));
  add(fitted.remarks, judge({drafted.right, halves.right}, jobs));
  if (!halves.alike()) add(fitted.remarks, judge({drafted.right, halves.left()}, jobs));
  add(fitted.remarks, judge_centres(halves));
  fitted.right_lengths = lengths_of(drafted.right, halves.right, halves.left());
  if (!halves.alike()) {
    fitted.left_lengths = lengths_of(drafted.right, halves.left(), halves.right);
  }
  fitted.pattern = joined(halves, block, fitted.remarks);
  return fitted;
}

RowAmount row_of(const Correction& correction) {
  const CorrectionWords* words = find_correction_words(correction.action, correction.place);
  if (words == nullptr) {
    refuse("fit.unknown", correction.action + " " + correction.place,
           "no correction is said in these words", "see docs/fitting.md for the words there are");
  }
  return {words->row,      words->sign,      correction.by.mm(), correction.as,
          correction.side, correction.place, correction.given};
}

FittedPattern apply_corrections(const Pattern& block, const std::vector<Correction>& corrections) {
  const auto [rows, kept] = active_rows(corrections);
  FittedPattern fitted = apply_rows(block, rows);
  for (Effect& effect : fitted.effects) {
    for (std::size_t& index : effect.corrections) index = kept[index];
  }
  return fitted;
}

}  // namespace blockwright
