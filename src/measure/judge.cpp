#include "blockwright/measure/likely_slips.hpp"
#include "blockwright/text/units.hpp"
#include "slips.hpp"
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

void judge_spread(const MeasurementInfo& entry, const Readings& readings, Unit typed_in,
                  Problems& problems) {
  const Measure usual = kUsualSpread.of(entry.name);
  const Measure spread = readings.spread();
  if (spread.number() <= usual.number() + kRounding) return;
  const bool wide = spread.number() > 2.0 * usual.number() + kRounding;
  problems.push_back({.severity = wide ? Severity::Warning : Severity::Note,
                      .code = "measure.spread",
                      .where = std::string(entry.key),
                      .message = std::to_string(readings.values.size()) + " readings lie " +
                                 spread + " apart; " + usual + " is usual at most. " +
                                 odd_reading_words(entry, readings, typed_in) + "the middle one, " +
                                 readings.median() + ", is used",
                      .hint = retake_hint(entry.name),
                      .measurements = {std::string(entry.key)},
                      .limit = {.most = usual}});
}

bool is_kept(const Ordering& order, const Body& body) {
  return order.times * body[order.smaller] < body[order.larger];
}

// "waist" of the waist girth.
std::string spoken(const MeasurementInfo& entry) {
  std::string name = name_text(entry.key);
  constexpr std::string_view girth = " girth";
  if (name.ends_with(girth)) name.resize(name.size() - girth.size());
  return name;
}

std::string_view more_than(MeasurementKind kind) {
  return kind == MeasurementKind::Girth ? "larger" : "longer";
}

// "Her waist (116 cm) is larger than her bust (114 cm)".
Wording order_words(const Ordering& order, const Body& body) {
  const MeasurementInfo &smaller = info(order.smaller), &larger = info(order.larger);
  const Measure value = order.times * body[smaller.name];
  const std::string relation =
      value > body[larger.name] ? std::string(more_than(smaller.kind)) + " than" : "no less than";
  return (order.times == 1.0 ? "her " : "twice her ") + spoken(smaller) + " (" + Wording(value) +
         ") is " + relation + " her " + spoken(larger) + " (" + body[larger.name] + ")";
}

std::string order_hint(const Ordering& order) {
  if (order.severity == Severity::Note) return "take both again; if they stay, it is her shape";
  const MeasurementInfo &smaller = info(order.smaller), &larger = info(order.larger);
  return fmt::format("no woman of the survey has that: take both again. {}: {} {}: {}",
                     name_text(smaller.key), smaller.how, name_text(larger.key), larger.how);
}

void judge_order(const Ordering& order, const Body& body, Problems& problems) {
  const MeasurementInfo &smaller = info(order.smaller), &larger = info(order.larger);
  problems.push_back({.severity = order.severity,
                      .code = "measure.order",
                      .where = std::string(smaller.key),
                      .message = order_words(order, body),
                      .hint = order_hint(order),
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
      judge_spread(entry, *readings, as.typed_in, problems);
    }
  }
  judge_orders(body, slips, problems);
  return problems;
}

}  // namespace blockwright
