#include "blockwright/measure/correction_table.hpp"
#include "halves.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace blockwright {
namespace {

using enum CorrectionRow;

Length amount_of(const Effect& effect) { return Length::mm(std::abs(effect.by)); }

bool same_body(BodySide a, BodySide b) {
  return a == b || a == BodySide::Both || b == BodySide::Both;
}

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

// Lines and darts that several rows pull on: what makes them longer or wider, and what shorter or
// narrower, by `times` their amount.
struct Line {
  std::string_view name;
  ShortList<CorrectionRow, 5> longer, shorter;
  bool is_girth = false;  ///< of both halves

  [[nodiscard]] double share_of(const Effect& effect) const {
    const double times = is_girth && effect.side == BodySide::Both ? 2.0 : 1.0;
    if (longer.contains(effect.row)) return times;
    return shorter.contains(effect.row) ? -times : 0.0;
  }
};

constexpr Line kLines[] = {
    {"back.centre_back",
     {UpperBackLonger, BackLongerBelowNape, LongerBelowBust, LongerAboveBust},
     {BackNeckLower, BackShoulderTakenUp, UpperBackShorter, BackWaistShorter, ShouldersTakenUp}},
    {"front.centre_front",
     {FrontNeckHigher, LongerBelowBust, LongerAboveBust, FrontWaistLonger},
     {FrontNeckLower, FrontShoulderTakenUp, UpperChestTakenIn, ShouldersTakenUp}},
    {"back.shoulder dart",
     {BackNeckEdgeTakenIn, BackShoulderDartWider, BackArmholeEdgeTakenIn, UpperBackLonger},
     {UpperBackShorter}},
    {"front.waist dart",
     {FrontNeckEdgeTakenIn, FrontArmholeEdgeTakenIn, FullerBust},
     {SmallerBust}},
    {"waist", {}, {WaistTakenIn, CentreSeamTakenIn}, true},
    {"side seam",
     {UnderarmHigher, ShoulderPointHigher, LongerBelowBust},
     {UnderarmLower, ShoulderPointLower, ArmholeLarger, ShouldersTakenUp}},
};

void judge_lines(const std::vector<Effect>& effects, Problems& problems) {
  for (const Line& line : kLines) {
    Wording rows;
    double sum = 0.0;
    int count = 0;
    for (const Effect& effect : effects) {
      const double share = line.share_of(effect);
      if (share == 0.0 || effect.by == 0.0) continue;
      sum += share * effect.by;
      rows += (count++ > 0 ? ", " : "") + words_of(effect) + ", " + amount_words(effect);
    }
    if (count < 2) continue;
    problems.push_back(
        {Severity::Note, "fit.same_line", std::string(line.name),
         "several corrections pull on it: " + rows + "; together about " + Length::mm(sum),
         "judge the sum, not each alone"});
  }
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
  return std::string(row_name(effect.row, effect.by < 0.0 ? -1 : 1));
}

Problems judge_together(const std::vector<Effect>& effects, double shoulder) {
  Problems problems;
  for (const Effect& effect : effects) judge_amount(effect, shoulder, problems);
  judge_voids(effects, problems);
  judge_chains(effects, problems);
  judge_lines(effects, problems);
  return problems;
}

}  // namespace blockwright
