#include "blockwright/measure/correction_table.hpp"
#include "halves.hpp"
#include "line_sums.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

using enum CorrectionRow;

Length amount_of(const Effect& effect) { return Length::mm(std::abs(effect.by)); }

// Corrections that, noted together, have another cause. `over`: only beyond so many mm of the
// first.
struct Chain {
  CorrectionRow first, second;  // second: NoRow if the first alone is enough
  double over;
  std::string_view message, hint;
};

// Common practice, no source.
constexpr Chain kChains[] = {
    {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, 0,
     "neck edge and armhole gape together: the bust is fuller than the draft",
     "note a fuller bust in place of both"},
    {ShoulderPointLower, UnderarmHigher, 0,
     "the underarm goes down with a sloping shoulder and up again",
     "lower the shoulder point first, and judge the underarm on the next toile"},
    {ShoulderPointHigher, UnderarmLower, 0,
     "the underarm goes up with a square shoulder and down again",
     "raise the shoulder point first, and judge the underarm on the next toile"},
    {BackWaistShorter, SideSeamBack, 0,
     "a short back waist and a side seam that swings forwards point to the front",
     "look at the bust and the front waist first"},
    {SideSeamForward, UpperBackLonger, 0, "a short back pulls the side seam backwards",
     "lengthen the upper back first, and judge the side seam on the next toile"},
    {ShoulderShorter, NoRow, 13,
     "with a shoulder so much too long across front and across back are likely wrong too",
     "take shoulder length, across front and across back again"},
    {ShoulderLonger, NoRow, 13,
     "with a shoulder so much too short across front and across back are likely wrong too",
     "take shoulder length, across front and across back again"},
    {FrontNeckEdgeTakenIn, NoRow, 13, "a neck edge that gapes so much wants a fuller bust",
     "note a fuller bust"},
    {BackArmholeFilled, NoRow, 6,
     "so much is missing behind the arm that the across back is narrow",
     "widen the across back in place of filling the armhole"},
};

// The first link of the chain, and large enough.
bool begins(const Chain& chain, const Effect& effect) {
  return effect.row == chain.first && effect.by > 0.0 && std::abs(effect.by) > chain.over;
}

Problem warning_of(const Chain& chain, const Effect& effect) {
  return {Severity::Warning, "fit.chain", words_of(effect), std::string(chain.message),
          std::string(chain.hint)};
}

// What a correction alone says of another cause; nothing where it says nothing.
std::optional<Problem> cause_of(const Effect& effect) {
  const auto* const found = std::ranges::find_if(
      kChains, [&](const Chain& chain) { return chain.second == NoRow && begins(chain, effect); });
  return found == std::end(kChains) ? std::nullopt : std::optional(warning_of(*found, effect));
}

// The length on paper that a girth is; empty of another measurement.
std::string_view girth_drawn(MeasurementName name) {
  if (name == MeasurementName::NeckBaseGirth) return "neckline";
  if (name == MeasurementName::BustGirth) return "bust_line";
  return name == MeasurementName::WaistGirth ? "waist" : "";
}

// What it changes of the measurement that it doubts: a girth as the paper has it, all else by the
// row's rule.
Measure change_of_tape(const Effect& effect, const DoubtedMeasurement& doubts, double shoulder) {
  const auto drawn = std::ranges::find(effect.moved, girth_drawn(doubts.name), &MovedLength::name);
  if (drawn != effect.moved.end()) return Length::mm(std::abs(drawn->change()));
  const Length by = amount_of(effect);
  if (!redraft_limit(doubts.name).is_angle()) return abs(doubts.change(by));
  return Angle::radians(std::asin(std::fmin(by.mm() / shoulder, 1.0)));
}

// More than a measurement may be off before it is taken again; nothing within that.
std::optional<Problem> too_much_for_tape(const Effect& effect, double shoulder) {
  const FittingRow& row = fitting_row(effect.row);
  if (!row.doubts || effect.side != BodySide::Both) return std::nullopt;
  const Measure limit = redraft_limit(row.doubts->name);
  const Measure change = change_of_tape(effect, *row.doubts, shoulder);
  if (change <= limit) return std::nullopt;
  const std::string taped = tape_words(row.doubts->name);
  return Problem{.severity = Severity::Warning,
                 .code = "fit.limit",
                 .where = words_of(effect),
                 .message = "it changes " + taped + " by " + change + "; over " + limit +
                            " later changes pile up on distorted seams",
                 .hint = "take " + taped + " again and draft anew",
                 .measurements = {std::string(info(row.doubts->name).key)},
                 .limit = {.most = limit, .value = change}};
}

// More than the row usually takes.
std::optional<Problem> too_much_for_row(const Effect& effect) {
  const Length by = amount_of(effect);
  const auto& [usual, least, most] = fitting_row(effect.row).amount;
  if (by <= most + Length::mm(1e-9)) return std::nullopt;
  return Problem{.severity = Severity::Warning,
                 .code = "fit.limit",
                 .where = words_of(effect),
                 .message = "usual is " + usual + ", from " + least + " to " + most,
                 .hint = "measure again before so much is altered on paper",
                 .limit = {.least = least, .most = most, .value = by}};
}

// An amount is warned of once, with another cause that it has.
std::optional<Problem> warning_of(const Effect& effect, double shoulder) {
  auto problem = too_much_for_tape(effect, shoulder);
  if (!problem) problem = too_much_for_row(effect);
  const auto cause = cause_of(effect);
  if (!problem || !cause) return problem ? problem : cause;
  problem->message += "; " + cause->message;
  problem->hint = cause->hint;
  return problem;
}

void judge_chains(const std::vector<Effect>& effects, Problems& problems) {
  for (const Chain& chain : kChains) {
    for (const Effect& a : effects) {
      const auto is_second = [&](const Effect& b) {
        return b.row == chain.second && b.by > 0.0 && same_body(a.side, b.side);
      };
      if (begins(chain, a) && std::ranges::any_of(effects, is_second)) {
        problems.push_back(warning_of(chain, a));
      }
    }
  }
}

// The words of a row at a place, in one direction; null if it has none.
const CorrectionWords* words_at(const Effect& effect, int sign) {
  const std::string_view usual = fitting_row(effect.row).traits.usual_place;
  const std::string_view place = effect.place.empty() ? usual : effect.place;
  const auto found = std::ranges::find_if(correction_words(), [&](const CorrectionWords& words) {
    return words.row == effect.row && words.sign == sign && (place.empty() || words.place == place);
  });
  return found == correction_words().end() ? nullptr : &*found;
}

// Where amounts were added, the sum may go the other way, in the words of another row.
std::string typed_words_of(const Effect& effect) {
  const int sign = effect.by < 0.0 ? -1 : 1;
  if (const CorrectionWords* words = words_at(effect, sign)) {
    return std::string(words->action) + " " + std::string(words->place);
  }
  if (const CorrectionWords* words = words_at(effect, -sign)) {
    return std::string(opposite_action(words->action)) + " " + std::string(words->place);
  }
  return std::string(row_name(effect.row, sign));
}

}  // namespace

std::string tape_words(MeasurementName name) {
  std::string words(info(name).key);
  std::ranges::replace(words, '_', ' ');
  return words;
}

Wording amount_words(const Effect& effect) {
  return effect.given.empty() ? Wording(amount_of(effect)) : Wording(effect.given);
}

std::string words_of(const Effect& effect) {
  std::string words = typed_words_of(effect);
  std::ranges::replace(words, '_', ' ');
  if (effect.side != BodySide::Both) words += ", " + std::string(side_word(effect.side));
  return words;
}

Problems judge_together(const std::vector<Effect>& effects, double shoulder) {
  Problems problems;
  const std::vector<LineSum> sums = sums_of(effects);
  for (const Effect& effect : effects) {
    const auto problem = is_said_in(sums, effect) ? cause_of(effect) : warning_of(effect, shoulder);
    if (problem) problems.push_back(*problem);
  }
  judge_chains(effects, problems);
  for (const LineSum& sum : sums) problems.push_back(said_of(sum));
  return problems;
}

}  // namespace blockwright
