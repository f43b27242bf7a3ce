#include "line_sums.hpp"

#include "halves.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr Line kLines[] = {
    {"back.centre_back", MeasurementName::BackWaistLength},
    {"front.centre_front", MeasurementName::FrontWaistLength},
    {"back.shoulder dart"},
    {"front.waist dart"},
    {"waist", MeasurementName::WaistGirth},
    {"bust_line", MeasurementName::BustGirth},
    {"front.side", MeasurementName::SideLength},
    {"front.shoulder", MeasurementName::ShoulderLength},
};

double change_of(const Effect& effect, std::string_view line) {
  const auto moved = std::ranges::find(effect.moved, line, &MovedLength::name);
  return moved == effect.moved.end() ? 0.0 : moved->change();
}

// A girth is of both halves of the body, whichever side was corrected.
LineSum sum_on(const Line& line, BodySide side, const std::vector<Effect>& effects) {
  LineSum sum{line, {}, 0.0};
  for (const Effect& effect : effects) {
    const double change = change_of(effect, line.name);
    const bool is_here = is_whole(line.name) || same_body(effect.side, side);
    if (!is_here || std::abs(change) < kLeastPull) continue;
    sum.pulling.push_back(&effect);
    sum.by += change;
  }
  return sum;
}

// Of one side alone no tape is in doubt.
bool is_over_limit(const LineSum& sum) {
  if (!sum.line.measured || std::ranges::any_of(sum.pulling, [](const Effect* effect) {
        return effect->side != BodySide::Both;
      })) {
    return false;
  }
  return Measure(Length::mm(std::abs(sum.by))) > redraft_limit(*sum.line.measured);
}

Wording sum_words(const LineSum& sum) {
  Wording rows;
  for (const Effect* effect : sum.pulling) {
    rows += (rows.empty() ? "" : "; ") + words_of(*effect) + ", " + amount_words(*effect);
  }
  if (std::abs(sum.by) < kLeastPull) return rows + "; together they leave it as it was";
  return rows + "; together about " + Length::mm(std::abs(sum.by)) +
         (sum.by < 0.0 ? " less" : " more");
}

}  // namespace

bool same_body(BodySide a, BodySide b) {
  return a == b || a == BodySide::Both || b == BodySide::Both;
}

std::vector<LineSum> sums_of(const std::vector<Effect>& effects) {
  std::vector<LineSum> sums;
  for (const Line& line : kLines) {
    for (const BodySide side : {BodySide::Right, BodySide::Left}) {
      const LineSum sum = sum_on(line, side, effects);
      const bool is_said = std::ranges::find(sums, sum) != sums.end();
      if (sum.pulling.size() > 1 && !is_said) sums.push_back(sum);
    }
  }
  return sums;
}

Problem said_of(const LineSum& sum) {
  const Wording said = "several corrections pull on it: " + sum_words(sum);
  if (!is_over_limit(sum)) {
    return {Severity::Note, "fit.same_line", std::string(sum.line.name), said,
            "judge the sum, not each alone"};
  }
  const MeasurementName measured = *sum.line.measured;
  const Measure limit = redraft_limit(measured);
  return {.severity = Severity::Warning,
          .code = "fit.limit",
          .where = std::string(sum.line.name),
          .message = said + "; over " + limit + " later changes pile up on distorted seams",
          .hint = "take " + tape_words(measured) + " again and draft anew",
          .measurements = {std::string(info(measured).key)},
          .limit = {.most = limit, .value = Length::mm(std::abs(sum.by))}};
}

bool is_said_in(const std::vector<LineSum>& sums, const Effect& effect) {
  const auto& doubts = fitting_row(effect.row).doubts;
  return doubts && std::ranges::any_of(sums, [&](const LineSum& sum) {
           return is_over_limit(sum) && sum.line.measured == doubts->name &&
                  std::ranges::count(sum.pulling, &effect) > 0;
         });
}

}  // namespace blockwright
