#include "new_tape_steps.hpp"

namespace blockwright {
namespace {

std::optional<Measure> reading_of(const Session& session, MeasurementName name) {
  const auto& readings = session.tape[name];
  return readings ? std::optional(readings->median()) : std::nullopt;
}

}  // namespace

const Session* session_of_fitting(const Client& client, const std::string& date) {
  const Session* found = nullptr;
  for (const Session& session : client.sessions) {
    if (session.date < date || (found == nullptr && session.date == date)) found = &session;
  }
  return found;
}

bool has_newer_tape(const BlockSource& source, const NumberedCorrection& numbered) {
  const Session* fitted_on = session_of_fitting(source.client, numbered.date);
  return fitted_on != nullptr && fitted_on->date < source.session.date;
}

bool speaks_of(const Session& session, MeasurementName name) {
  using enum MeasurementName;
  const auto& tape = session.tape;
  return tape[name] ||
         (name == ShoulderSlope && tape[FrontShoulderSlant] && tape[BackShoulderSlant]);
}

TapeStep step_between(const Session& since, const Session& until, MeasurementName name) {
  return {&since, &until, reading_of(since, name), reading_of(until, name), measure_of(name, 0.0)};
}

std::optional<double> taped_change(const TapeStep& step) {
  if (!step.was || !step.is) return std::nullopt;
  return (*step.is - *step.was).number();
}

std::optional<DoubtedMeasurement> asked_of(const Correction& correction, const RowAmount& amount) {
  if (correction.new_tape.answer == OnNewTape::Keep) return std::nullopt;
  return fitting_row(amount.row).doubts;
}

double asked_change(const DoubtedMeasurement& doubts, const RowAmount& amount) {
  return doubts.change(Length::mm(amount.sign * counted_amount(amount))).number();
}

}  // namespace blockwright
