#include "blockwright/measure/likely_slips.hpp"
#include "survey.hpp"
#include "tape_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace blockwright {
namespace {

std::string retake_hint(MeasurementName name) {
  return fmt::format("take it again: {}", info(name).how);
}

void judge_spread(const MeasurementInfo& entry, const Readings& readings, Problems& problems) {
  const Measure usual = kUsualSpread.of(entry.name);
  const Measure spread = readings.spread();
  if (spread.number() <= usual.number() + kRounding) return;
  const bool wide = spread.number() > 2.0 * usual.number() + kRounding;
  problems.push_back({.severity = wide ? Severity::Warning : Severity::Note,
                      .code = "measure.spread",
                      .where = std::string(entry.key),
                      .message = std::to_string(readings.values.size()) + " readings lie " +
                                 spread + " apart; " + usual + " is usual at most. Their median " +
                                 readings.median() + " is used",
                      .hint = retake_hint(entry.name),
                      .measurements = {std::string(entry.key)},
                      .limit = {.most = usual}});
}

bool is_kept(const Ordering& order, const Body& body) {
  return order.times * body[order.smaller] < body[order.larger];
}

void judge_order(const Ordering& order, const Body& body, Problems& problems) {
  const MeasurementInfo &smaller = info(order.smaller), &larger = info(order.larger);
  problems.push_back({.severity = order.severity,
                      .code = "measure.order",
                      .where = std::string(smaller.key),
                      .message = (order.times == 1.0 ? "" : "twice ") + std::string(smaller.key) +
                                 " (" + Wording(body[smaller.name]) + ") is not less than " +
                                 std::string(larger.key) + " (" + body[larger.name] +
                                 "), as it is on every body of the survey",
                      .hint = fmt::format("check both. {}: {} {}: {}", smaller.key, smaller.how,
                                          larger.key, larger.how),
                      .measurements = {std::string(smaller.key), std::string(larger.key)}});
}

bool names(const LikelySlip& slip, MeasurementName name) {
  return std::ranges::find(slip.values, name, &SlippedValue::name) != slip.values.end();
}

// An order that a slip has broken says nothing new.
void judge_orders(const Body& body, const std::vector<LikelySlip>& slips, Problems& problems) {
  for (const Ordering& order : orderings()) {
    if (!body.taped(order.smaller) || !body.taped(order.larger)) continue;
    const bool told = std::ranges::any_of(slips, [&](const LikelySlip& slip) {
      return names(slip, order.smaller) || names(slip, order.larger);
    });
    if (!told && !is_kept(order, body)) judge_order(order, body, problems);
  }
}

// The likeliest alone, with how many there are beside it.
void tell_slips(const std::vector<LikelySlip>& slips, Slips which, Problems& problems) {
  for (const LikelySlip& slip : slips) {
    problems.push_back(problem_of(slip));
    if (which == Slips::All || slips.size() == 1) continue;
    const std::size_t more = slips.size() - 1;
    Wording& hint = problems.back().hint;
    hint += fmt::format("{} Then look at {} more: `blockwright tape CLIENT --check --all` lists {}",
                        hint.plain().ends_with('.') ? "" : ".", more, more == 1 ? "it" : "them");
    return;
  }
}

}  // namespace

Problems judge(const Session& session, const Body& body, const JudgedAs& as) {
  const std::vector<LikelySlip> slips = likely_slips(session, body, as.typed_in);
  Problems problems;
  tell_slips(slips, as.slips, problems);
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    if (const auto& readings = session.tape[entry.name]) {
      judge_spread(entry, *readings, problems);
    }
  }
  judge_orders(body, slips, problems);
  return problems;
}

}  // namespace blockwright
