#include "blockwright/fit/apply.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "half_measures.hpp"
#include "halves.hpp"
#include "limits.hpp"
#include "parts.hpp"
#include "together.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// A length that changed by less has not moved, in mm.
constexpr double kMoved = 0.005;
// A turn of the joined neckline that counts.
constexpr Angle kSmoothNeck = Angle::degrees(0.01);
// A sum of less, in mm, is what rounding leaves of opposite corrections that cancel.
constexpr double kNothing = 1e-6;
// No piece takes more than this, in mm; within it every row decides for itself. Ours: far beyond
// the most of any row.
constexpr double kMostAmount = 1000.0;

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
  moves.times = moves_of(amount.row).times;
  return moves;
}

// One row asked for, with all amounts of its kind added.
struct Job {
  Effect effect;
  RowMoves moves;
  std::string place;
};

bool is_same(const Job& job, const RowMoves& moves, const std::string& place,
             const Effect& effect) {
  return job.moves.apply == moves.apply && job.place == place && job.effect.stage == effect.stage &&
         job.effect.side == effect.side;
}

void require_moderate(const Effect& effect) {
  if (std::abs(effect.by) <= kMostAmount) return;
  refuse("fit.amount", words_of(effect),
         Length::mm(effect.by) + ": over " + Length::mm(kMostAmount) + " cannot be meant",
         "look at the amount and its unit, or draft anew");
}

std::vector<Job> jobs_of(const std::vector<RowAmount>& rows) {
  std::vector<Job> jobs;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    require_sound(rows[i]);
    const RowMoves moves = moves_for(rows[i]);
    const std::string place = place_of(rows[i]);
    Effect effect{{i},
                  rows[i].row,
                  fitting_row(rows[i].row).stage,
                  rows[i].side,
                  rows[i].sign * counted_amount(rows[i]),
                  {}};
    const auto same = std::find_if(jobs.begin(), jobs.end(), [&](const Job& job) {
      return is_same(job, moves, place, effect);
    });
    if (same == jobs.end()) {
      jobs.push_back({effect, moves, place});
      continue;
    }
    same->effect.corrections.push_back(i);
    same->effect.by += effect.by * moves.times * same->moves.times;
  }
  for (const Job& job : jobs) require_moderate(job.effect);
  std::stable_sort(jobs.begin(), jobs.end(),
                   [](const Job& a, const Job& b) { return a.effect.stage < b.effect.stage; });
  return jobs;
}

// A law of a whole girth holds for both halves; one half alone makes half of it.
void add_predictions(std::vector<MovedLength>& moved, const std::vector<Law>& laws, BodySide side) {
  for (const Law& law : laws) {
    const auto found = std::find_if(moved.begin(), moved.end(),
                                    [&](const MovedLength& m) { return m.name == law.name; });
    if (found == moved.end()) continue;
    const bool half = side != BodySide::Both && is_whole(law.name);
    found->predicted = half ? 0.5 * law.change : law.change;
    found->sample = law.kind != LawKind::Exact;
  }
}

std::vector<MovedLength> compared(const std::vector<FitLength>& before,
                                  const std::vector<FitLength>& after) {
  std::vector<MovedLength> moved;
  for (const FitLength& is : after) {
    const auto was = std::find_if(before.begin(), before.end(),
                                  [&](const FitLength& b) { return b.name == is.name; });
    moved.push_back({is.name, was == before.end() ? 0.0 : was->mm, is.mm, std::nullopt, false});
  }
  return moved;
}

bool is_worth_telling(const MovedLength& length) {
  return std::abs(length.change()) > kMoved || (length.predicted && *length.predicted != 0.0);
}

double neck_corner(const Opened& open) {
  const auto& edges = open.edges;
  const Vec shoulder =
      -end_tangent(edges[static_cast<std::size_t>(BlockEdge::Shoulder)].stretches.back());
  return turn_between(
             start_tangent(edges[static_cast<std::size_t>(BlockEdge::Neckline)].stretches.front()),
             shoulder)
      .radians();
}

// Where the front neckline gave up a part of its right angle at the shoulder, the back's takes it
// up, so that the joined neckline stays smooth.
void smooth_neck(const HalfBlock& before, HalfBlock& after) {
  const double was = neck_corner(before.front) + neck_corner(before.back);
  const double off = neck_corner(after.front) + neck_corner(after.back) - was;
  if (std::abs(off) < kSmoothNeck.radians()) return;
  Redrawing work(after.back);
  work.turn_start(kNeckline, Angle::radians(off));
  after.back = work.finished();
}

HalfBlock applied(const HalfBlock& half, const Job& job) {
  HalfBlock result = half;
  job.moves.apply(result, {job.moves.times * job.effect.by, job.place});
  smooth_neck(half, result);
  require_possible(half, result);
  return result;
}

void carry_out(Halves& halves, Job& job) {
  if (std::abs(job.effect.by) < kNothing) return;
  if (job.effect.side != BodySide::Both && halves.alike()) halves.own_left = halves.right;
  HalfBlock& left = halves.alike() ? halves.right : *halves.own_left;
  HalfBlock& here = job.effect.side == BodySide::Left ? left : halves.right;
  HalfBlock& there = &here == &left ? halves.right : left;
  const auto lengths_before = fit_lengths(here, there);
  const auto laws = job.moves.laws(here, {job.moves.times * job.effect.by, job.place});
  here = applied(here, job);
  if (job.effect.side == BodySide::Both && !halves.alike()) there = applied(there, job);
  job.effect.moved = compared(lengths_before, fit_lengths(here, there));
  add_predictions(job.effect.moved, laws, job.effect.side);
  std::erase_if(job.effect.moved, [](const MovedLength& m) { return !is_worth_telling(m); });
}

// A refusal from within names row and amount here, and the measurement that the row doubts.
void carry_out_named(Halves& halves, Job& job) {
  try {
    carry_out(halves, job);
  } catch (const InputError& error) {
    Problem problem = error.problem();
    problem.where = words_of(job.effect);
    problem.message = Length::mm(std::abs(job.effect.by)) + ": " + problem.message;
    const auto& doubts = fitting_row(job.effect.row).doubts;
    if (doubts && problem.measurements.empty()) {
      problem.measurements.emplace_back(info(*doubts).key);
      problem.hint += "; or take " + tape_words(*doubts) + " again and draft anew";
    }
    throw InputError(problem);
  }
}

void add(Problems& problems, const Problems& more) {
  for (const Problem& problem : more) {
    if (std::find(problems.begin(), problems.end(), problem) == problems.end()) {
      problems.push_back(problem);
    }
  }
}

}  // namespace

double counted_amount(const RowAmount& amount) {
  const bool centre = fitting_row(amount.row).traits.at_centre_line;
  switch (amount.as) {
    case AmountAs::TuckDepth:
    case AmountAs::PerSeam:
      return centre ? amount.by : 2.0 * amount.by;
    case AmountAs::WholeGirth:
      return 0.5 * amount.by;
    case AmountAs::Length:
    case AmountAs::PerHalf:
      return amount.by;
  }
  return amount.by;
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
  add(fitted.remarks, judge_half(drafted.right, halves.right));
  if (!halves.alike()) add(fitted.remarks, judge_half(drafted.left(), halves.left()));
  add(fitted.remarks, judge_centres(halves));
  fitted.pattern = joined(halves, block, fitted.remarks);
  return fitted;
}

RowAmount row_of(const Correction& correction) {
  const CorrectionWords* words = find_correction_words(correction.action, correction.place);
  if (words == nullptr) {
    refuse("fit.unknown", correction.action + " " + correction.place,
           "no correction is said in these words", "see docs/fitting.md for the words there are");
  }
  return {words->row,    words->sign,     correction.by.mm(),
          correction.as, correction.side, correction.place};
}

FittedPattern apply_corrections(const Pattern& block, const std::vector<Correction>& corrections) {
  std::vector<RowAmount> rows;
  std::vector<std::size_t> kept;
  for (std::size_t i = 0; i < corrections.size(); ++i) {
    if (corrections[i].withdrawn) continue;
    rows.push_back(row_of(corrections[i]));
    kept.push_back(i);
  }
  FittedPattern fitted = apply_rows(block, rows);
  for (Effect& effect : fitted.effects) {
    for (std::size_t& index : effect.corrections) index = kept[index];
  }
  return fitted;
}

}  // namespace blockwright
