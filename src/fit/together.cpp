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

// More than a measurement may be off before it is taken again; nothing within that.
std::optional<Problem> too_much_for_tape(const Effect& effect, double shoulder) {
  const FittingRow& row = fitting_row(effect.row);
  if (!row.doubts || effect.side != BodySide::Both) return std::nullopt;
  const Length by = amount_of(effect);
  const Measure limit = redraft_limit(row.doubts->name);
  const Measure change = limit.is_angle()
                             ? Angle::radians(std::asin(std::fmin(by.mm() / shoulder, 1.0)))
                             : abs(row.doubts->change(by));
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

// An amount is warned of once.
void judge_amount(const Effect& effect, double shoulder, Problems& problems) {
  const auto of_tape = too_much_for_tape(effect, shoulder);
  const auto problem = of_tape ? of_tape : too_much_for_row(effect);
  if (problem) problems.push_back(*problem);
}

// What others have changed is said once of each.
void judge_voids(const std::vector<Effect>& effects, Problems& problems) {
  for (const Effect& judged : effects) {
    Wording changed;
    for (const Effect& other : effects) {
      const bool voids = &other != &judged && fitting_row(other.row).voids.contains(judged.row);
      if (!voids || !same_body(other.side, judged.side)) continue;
      changed += (changed.empty() ? "" : "; ") + words_of(other) + ", " + amount_words(other);
    }
    if (changed.empty()) continue;
    problems.push_back({Severity::Warning, "fit.void", words_of(judged),
                        "what this was judged by has changed: " + changed,
                        "judge it again on the next toile"});
  }
}

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
     "a shoulder so much too long: across front and across back are likely wrong too",
     "take shoulder length, across front and across back again"},
    {ShoulderLonger, NoRow, 13,
     "a shoulder so much too short: across front and across back are likely wrong too",
     "take shoulder length, across front and across back again"},
    {FrontNeckEdgeTakenIn, NoRow, 13, "a neck edge that gapes so much wants a fuller bust",
     "note a fuller bust"},
    {BackArmholeFilled, NoRow, 6,
     "so much is missing behind the arm that the across back is narrow",
     "widen the across back in place of filling the armhole"},
};

void judge_chains(const std::vector<Effect>& effects, Problems& problems) {
  for (const Chain& chain : kChains) {
    for (const Effect& a : effects) {
      if (a.row != chain.first || a.by <= 0.0 || std::abs(a.by) <= chain.over) continue;
      const auto is_second = [&](const Effect& b) {
        return b.row == chain.second && b.by > 0.0 && same_body(a.side, b.side);
      };
      if (chain.second == NoRow || std::ranges::any_of(effects, is_second)) {
        problems.push_back({Severity::Warning, "fit.chain", words_of(a), std::string(chain.message),
                            std::string(chain.hint)});
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
    if (!is_said_in(sums, effect)) judge_amount(effect, shoulder, problems);
  }
  judge_voids(effects, problems);
  judge_chains(effects, problems);
  for (const LineSum& sum : sums) problems.push_back(said_of(sum));
  return problems;
}

}  // namespace blockwright
