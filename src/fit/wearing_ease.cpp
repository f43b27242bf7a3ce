#include "blockwright/fit/wearing_ease.hpp"

#include "halves.hpp"

#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <string>

namespace blockwright {
namespace {

// A girth that is so near is there, in mm: less than a tape shows, and than a draft is off.
constexpr double kThere = 0.05;
// The nearest that can be done is found to this, in mm.
constexpr double kFoundTo = 0.25;

// What is done to one half of the body, in mm: out at the bust and the waist, up and in.
using Moves = WearingEase;

constexpr bool is_nothing(double by) { return by == 0.0; }

double bust_of(const HalfBlock& half) {
  return bust_line_width(half.front) + bust_line_width(half.back);
}

double waist_of(const HalfBlock& half) {
  return closed_length(half.front, BlockEdge::Waist) + closed_length(half.back, BlockEdge::Waist);
}

WornGirths girths_of(const Halves& halves) {
  return {bust_of(halves.right) + bust_of(halves.left()),
          waist_of(halves.right) + waist_of(halves.left())};
}

void do_row(HalfBlock& half, CorrectionRow row, RowAsk ask) {
  if (is_nothing(ask.by)) return;
  ask.by *= moves_of(row).sign;
  moves_of(row).apply(half, ask);
}

// How far the marked bust line ends over the bust point.
double end_of_bust_line(const HalfBlock& half) {
  return side_notch_point(half.front).y - apex_of(half.front).y;
}

// A side that turns takes its notches off their level; they go back, and stay mates.
void level_notches(const HalfBlock& before, HalfBlock& half) {
  const double along =
      (end_of_bust_line(before) - end_of_bust_line(half)) / up_the_side(half.front).y;
  for (Opened* piece : {&half.front, &half.back}) {
    for (auto& notch : piece->notches) {
      if (notch.edge == index_of(BlockEdge::Side)) notch.along += along;
    }
  }
}

// In the fitter's order.
HalfBlock with_moves(const HalfBlock& half, const Moves& by) {
  using enum CorrectionRow;
  HalfBlock result = half;
  do_row(result, ShoulderShorter, {by.shoulder_in, ""});
  do_row(result, WaistTakenIn, {-by.waist, "waist"});
  do_row(result, BustLetOutAtSide, {by.bust, "side_at_bust"});
  do_row(result, UnderarmHigher, {by.raise_underarm, ""});
  level_notches(half, result);
  return result;
}

void require_little_at_sides(double by) {
  const double edge = 0.5 * std::abs(by);
  if (edge <= kMostAtSideEdge) return;
  refuse_fit("fit.limit",
             "each edge of the side seams would move by " + Length::mm(edge) + "; at most " +
                 Length::mm(kMostAtSideEdge) + " leave an armhole",
             "");
}

// The half with its girths changed by so much, the underarm raised and the shoulder shortened. The
// waist's move moves the bust line a little, the bust's the waist, so that both are found together.
HalfBlock worn_half(const HalfBlock& half, const Moves& wanted) {
  constexpr int passes = 12;
  constexpr double near = 1e-4;  // mm
  require_little_at_sides(wanted.bust);
  const double bust = bust_of(half) + wanted.bust, waist = waist_of(half) + wanted.waist;
  Moves by = wanted;
  HalfBlock worn = with_moves(half, by);
  for (int pass = 0; pass < passes; ++pass) {
    const double bust_off = bust - bust_of(worn), waist_off = waist - waist_of(worn);
    if (std::abs(bust_off) < near && std::abs(waist_off) < near) break;
    by.bust += bust_off;
    by.waist += waist_off;
    worn = with_moves(half, by);
  }
  if (std::abs(bust - bust_of(worn)) > kThere || std::abs(waist - waist_of(worn)) > kThere) {
    refuse_fit("fit.limit", "bust and waist do not come out together at the side seams", "");
  }
  require_possible({half, worn}, wanted.has_armhole ? ArmholeEdge::Kept : ArmholeEdge::CutAway);
  return worn;
}

bool is_nothing(const Moves& by) {
  return is_nothing(by.bust) && is_nothing(by.waist) && is_nothing(by.raise_underarm) &&
         is_nothing(by.shoulder_in);
}

Halves worn_halves(const Halves& halves, const Moves& by) {
  if (is_nothing(by)) return halves;
  Halves worn{worn_half(halves.right, by), std::nullopt};
  if (!halves.alike()) worn.own_left = worn_half(halves.left(), by);
  return worn;
}

// The parts of an ease, in the order in which they are asked for until one cannot be done.
struct EasePart {
  double WearingEase::*of;
  std::string_view key, words;
  double whole;    // of what is done on one half
  bool as_far_as;  // of a named ease: done as far as the block takes it
};
constexpr auto kParts = std::to_array<EasePart>({
    {&WearingEase::bust, "bust", "bust ease", 2.0, false},
    {&WearingEase::waist, "waist", "waist ease", 2.0, false},
    {&WearingEase::raise_underarm, "raise_underarm", "underarm up", 1.0, true},
    {&WearingEase::shoulder_in, "shoulder_in", "shoulder in", 1.0, true},
});

// Why these moves cannot be done; nothing where they can.
std::optional<Problem> fault_of(const Halves& halves, const Moves& by) {
  try {
    (void)worn_halves(halves, by);
    return std::nullopt;
  } catch (const InputError& error) {
    return error.problem();
  }
}

// The largest share of one of these moves that can be done, the others in full.
double most_done(const Halves& halves, const Moves& by, const EasePart& part) {
  const double asked = by.*part.of;
  double most = 0.0, over = 1.0;
  while ((over - most) * std::abs(asked) * part.whole > kFoundTo) {
    Moves tried = by;
    const double middle = 0.5 * (most + over);
    tried.*part.of = middle * asked;
    (fault_of(halves, tried) ? over : most) = middle;
  }
  return most;
}

Wording asked_words(const EasePart& part, const WearingEase& ease) {
  return std::string(part.words) + " " + Length::mm(ease.*part.of);
}

[[noreturn]] void refuse_part(const EasePart& part, const WearingEase& ease, double nearest,
                              const Problem& why) {
  throw InputError({Severity::Error, "fit.wearing_ease", "wearing_ease." + std::string(part.key),
                    asked_words(part, ease) + ": " + why.message,
                    "the nearest that this block takes is " + Length::mm(nearest)});
}

Problem told_less(const EasePart& part, const WearingEase& ease, double done, const Problem& why) {
  return {Severity::Note, "fit.wearing_ease", "wearing_ease." + std::string(part.key),
          asked_words(part, ease) + " is usual, and this block takes " + Length::mm(done) +
              " of it: with all of it " + why.message,
          ""};
}

// The moves, of a named ease each as far as the block takes it; else the first part that cannot be
// done is refused, with the nearest that can.
Moves possible_moves(const Moves& by, const Halves& halves, const WearingEase& ease,
                     Problems& remarks) {
  if (!fault_of(halves, by)) return by;
  Moves done{.has_armhole = by.has_armhole};
  for (const EasePart& part : kParts) {
    const double asked = by.*part.of;
    done.*part.of = asked;
    const auto why = is_nothing(asked) ? std::nullopt : fault_of(halves, done);
    if (!why) continue;
    const double most = most_done(halves, done, part), change = part.whole * asked;
    const double found = ease.*part.of - (1.0 - most) * change;
    // Whole mm, towards what can be done.
    const double nearest = change < 0.0 ? std::ceil(found) : std::floor(found);
    if (ease.name.empty() || !part.as_far_as) refuse_part(part, ease, nearest, *why);
    done.*part.of = nearest;
    remarks.push_back(told_less(part, ease, nearest, *why));
  }
  return done;
}

// A half's share of what is missing of a girth; nothing where the girth is there.
double half_of_missing(double missing) { return std::abs(missing) < kThere ? 0.0 : 0.5 * missing; }

void judge_worn(Problems& remarks, const Redrawn& half) {
  for (const Problem& problem : judge_half(half)) {
    if (std::ranges::count(remarks, problem) == 0) remarks.push_back(problem);
  }
}

}  // namespace

WornBlock with_wearing_ease(const Pattern& block, const std::vector<Correction>& corrections,
                            const WearingEase& ease, const WornGirths& body) {
  const Halves drafted = halves_of(block), fitted = fitted_halves(block, corrections);
  WornBlock result{{}, girths_of(drafted), girths_of(fitted), {}, {}};
  Moves by = ease;
  by.bust = half_of_missing(body.bust + ease.bust - result.drafted.bust);
  by.waist = half_of_missing(body.waist + ease.waist - result.drafted.waist);
  const Halves worn = worn_halves(fitted, possible_moves(by, fitted, ease, result.remarks));
  result.worn = girths_of(worn);
  judge_worn(result.remarks, {fitted.right, worn.right});
  judge_worn(result.remarks, {fitted.left(), worn.left()});
  Problems told_before;
  result.pattern = joined(worn, block, told_before);
  return result;
}

}  // namespace blockwright
