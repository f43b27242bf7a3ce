#include "block_pass.hpp"
#include "blockwright/geometry/solve.hpp"
#include "blockwright/measure/correction_table.hpp"
#include "drafted_lengths.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

// The value in doubt is sought between these shares of what the correction's rule asks for. Ours.
constexpr double kNearest = 0.5;
constexpr double kFarthest = 1.5;

/// What a tape shows, in mm: within it two lengths are the same.
double step_of(Unit unit) { return unit == Unit::Cm ? 1.0 : Length::inches(1.0 / 16.0).mm(); }

/// As a tape is written down: whole millimetres, sixteenths of an inch, tenths of a degree.
Measure as_written(Measure value, Unit unit) {
  if (value.is_angle()) return Measure::degrees(std::round(value.number() * 10.0) / 10.0);
  return as_printed(value.length(), unit);
}

/// The length that the fitter watches; where she watches none, what the correction moved most.
const MovedLength* telling_length(const BlockRun& run, const Effect& effect) {
  const Correction& correction = run.corrections[effect.corrections.front()].correction;
  for (const LengthMoved& watched : watched_at(effect.row, correction.place).lengths) {
    const auto found = std::ranges::find(effect.moved, watched.name, &MovedLength::name);
    if (found != effect.moved.end()) return &*found;
  }
  const auto most = std::ranges::max_element(
      effect.moved, {}, [](const MovedLength& moved) { return std::abs(moved.change()); });
  return most == effect.moved.end() ? nullptr : &*most;
}

/// A length of the block as drafted with another value of a measurement.
double drafted_length(const BlockRun& run, MeasurementName name, Measure value,
                      const std::string& length) {
  Session session = run.session;
  session.tape[name] = Readings{{value}};
  return length_named(drafted_lengths(session, Ease::of(run.client)), length);
}

/// The value whose draft has what the correction did; nothing where none near the rule's has.
std::optional<Measure> solved(const BlockRun& run, const Doubt& doubt, Measure asked,
                              const MovedLength& length) {
  const auto drafted = run.fitted.right_lengths;
  const auto now = std::ranges::find(drafted, length.name, &MovedLength::name);
  if (now == drafted.end()) return std::nullopt;
  const auto off = [&](double value) {
    return drafted_length(run, doubt.name, measure_of(doubt.name, value), length.name) -
           now->before - length.change();
  };
  const double low = (doubt.taped + kNearest * asked).number();
  const double high = (doubt.taped + kFarthest * asked).number();
  const auto can_be = [&](double value) {
    return info(doubt.name).allows(measure_of(doubt.name, value));
  };
  if (!can_be(low) || !can_be(high)) return std::nullopt;
  if ((off(low) > 0.0) == (off(high) > 0.0)) return std::nullopt;
  return measure_of(doubt.name, solve_between(off, {low, high}, 0.05));
}

/// What the paper shows of the length that is watched, with the correction and drafted instead.
DraftedInstead drafted_instead(const BlockRun& run, const Doubt& doubt, const MovedLength& length) {
  const auto printed = [&](double mm) { return as_printed(Length::mm(mm), run.unit); };
  const auto& lengths = run.fitted.right_lengths;
  const auto now = std::ranges::find(lengths, length.name, &MovedLength::name);
  const double instead = drafted_length(run, doubt.name, doubt.would_do, length.name);
  const double off = instead - now->before - length.change();
  return {length.name, printed(length.after) - printed(length.before),
          printed(instead) - printed(now->before), std::abs(off) <= step_of(run.unit)};
}

/// Taken again after the fitting, the tape is no longer the one that was in doubt.
bool was_taken_since(const BlockRun& run, const Effect& effect) {
  return run.body.taped(fitting_row(effect.row).doubts->name) &&
         std::ranges::all_of(effect.corrections, [&](std::size_t i) {
           return run.corrections[i].date < run.session.date;
         });
}

}  // namespace

std::optional<Doubt> doubt_of(const BlockRun& run, const Effect& effect) {
  const FittingRow& row = fitting_row(effect.row);
  // Of one side alone it is the body that differs: a tape speaks of both.
  const bool is_of_both = effect.side == BodySide::Both;
  if (!row.doubts || !is_of_both || !run.body.has(row.doubts->name)) return std::nullopt;
  const MovedLength* length = telling_length(run, effect);
  const Measure asked = row.doubts->change(Length::mm(effect.by));
  if (length == nullptr || asked.number() == 0.0 || was_taken_since(run, effect))
    return std::nullopt;
  const Measure taped = run.body[row.doubts->name];
  Doubt doubt{row.doubts->name, taped, taped + asked, !run.body.taped(row.doubts->name), {}};
  doubt.would_do =
      as_written(solved(run, doubt, asked, *length).value_or(doubt.would_do), run.unit);
  if (info(doubt.name).allows(doubt.would_do)) {
    doubt.instead = drafted_instead(run, doubt, *length);
  }
  return doubt;
}

}  // namespace blockwright
