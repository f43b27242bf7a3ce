#include "blockwright/measure/settled_tape.hpp"

#include "blockwright/base/number_text.hpp"
#include "measure_text.hpp"
#include "network.hpp"
#include "survey.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace blockwright {
namespace {

using enum MeasurementName;

// Sums that hardly differ between bodies of one bust girth: on nearly every body each lies within
// kBandSd of what the survey expects of that bust. Beside each that value and its SD in mm at the
// survey's mean bust of 907 mm (computed).
using Sum = std::array<SumPart, 3>;
constexpr auto kSums = std::to_array<Sum>({
    // Side and scye make up the back, but for the slant of the shoulders: -4.5, 10.5.
    {{{SideLength, 1.0}, {ScyeDepth, 1.0}, {BackWaistLength, -1.0}}},
    // The front neck and the curve of the bust, on average 0.224 of the neck girth: 0.6, 13.1.
    {{{SideNeckToWaist, 1.0}, {FrontWaistLength, -1.0}, {NeckBaseGirth, -0.224}}},
    // Front against back, over the bust and at the centre: 22.5, 18.0; -55.6, 16.8.
    {{{SideNeckToWaist, 1.0}, {BackWaistLength, -1.0}}},
    {{{FrontWaistLength, 1.0}, {BackWaistLength, -1.0}}},
    // Front against side: 212.7, 13.3; 134.6, 14.9.
    {{{SideNeckToWaist, 1.0}, {SideLength, -1.0}}},
    {{{FrontWaistLength, 1.0}, {SideLength, -1.0}}},
    // The armpit lies about half the armscye under the nape: 0.1, 13.8.
    {{{ScyeDepth, 1.0}, {ArmscyeGirth, -0.5}}},
});
constexpr double kBandSd = 3.3;

// A band passed by more SDs of its sum is a slip of the tape rather than an error of it; no value
// moves by more of its own.
constexpr double kSlipSd = 2.0;
// The most that one band may push where others that do not give oppose it.
constexpr double kMostPushes = 3.0;
// What moves less, in mm or degrees, is rounding.
constexpr double kMoved = 1e-3;

// What a tape shows of a body, and the bounds on it. Bounds without a free tape are left out.
class TapeNetwork {
 public:
  explicit TapeNetwork(const Body& body) : body_(body) {
    observations_.reserve(kMeasurementCount);
    for (const MeasurementInfo& entry : measurement_catalogue()) {
      const bool taped = body.taped(entry.name);
      observations_.push_back(
          {taped ? body[entry.name].number() : 0.0,
           taped && !body.sure(entry.name) ? taped_sd(body, entry.name).number() : 0.0});
    }
    bounds_.reserve(2 * kSums.size() + orderings().size());
    bound_sums();
    for (const Ordering& order : orderings()) {
      if (order.severity == Severity::Note) continue;
      const Sum excess{{{order.smaller, order.times}, {order.larger, -1.0}}};
      if (are_taped(excess)) at_most(excess, -order.gap.mm());
    }
  }

  [[nodiscard]] bool agrees() const {
    return std::ranges::none_of(bounds_, [&](const Bound& b) { return passed_by(b) > 0.0; });
  }
  [[nodiscard]] SettledTape settled() const;

 private:
  [[nodiscard]] bool are_taped(const Sum& sum) const;
  void bound_sums();
  void at_most(const Sum& sum, double most);
  [[nodiscard]] double passed_by(const Bound& bound) const {
    return bound.passed_by(observations_);
  }
  [[nodiscard]] Bound as_far_as_tapes_err(Bound bound) const;
  [[nodiscard]] std::vector<Bound> with_most_movement(std::vector<Bound> bounds) const;
  [[nodiscard]] std::vector<Bound> met(const Movement& movement) const;
  [[nodiscard]] Wording why(std::size_t observation, const Movement& movement) const;
  [[nodiscard]] Wording contradiction(const Bound& bound) const;

  const Body& body_;
  std::vector<Observation> observations_;
  std::vector<Bound> bounds_;
};

std::span<const SumPart> parts_of(const Sum& sum) {
  return std::span(sum).first(sum.back().times == 0.0 ? 2 : 3);
}

Sum turned(Sum sum) {
  for (SumPart& part : sum) part.times = -part.times;
  return sum;
}

bool TapeNetwork::are_taped(const Sum& sum) const {
  const auto taped = [&](const SumPart& part) { return body_.taped(part.name); };
  return std::ranges::all_of(parts_of(sum), taped);
}

void TapeNetwork::bound_sums() {
  Regression at_bust(beyond_survey(body_[BustGirth]));
  at_bust.learn(BustGirth, body_[BustGirth]);
  for (const Sum& sum : kSums) {
    if (!are_taped(sum)) continue;
    const auto [value, sd] = at_bust.expected(parts_of(sum));
    at_most(sum, (value + kBandSd * sd).number());
    at_most(turned(sum), (kBandSd * sd - value).number());
  }
}

void TapeNetwork::at_most(const Sum& sum, double most) {
  Bound bound{.most = most};
  for (std::size_t i = 0; const auto& [name, times] : parts_of(sum)) {
    bound.terms[i++] = {static_cast<std::size_t>(name), times};
  }
  const double sd = bound.sd(observations_);
  if (sd == 0.0) return;
  bound.most_push = kMostPushes * kSlipSd / sd;
  bounds_.push_back(bound);
}

// Loosened by what is a slip: all of what passes it up to kSlipSd is shared out, at twice that
// nothing.
Bound TapeNetwork::as_far_as_tapes_err(Bound bound) const {
  const double passed = passed_by(bound);
  if (passed <= 0.0) return bound;
  const double slip = kSlipSd * bound.sd(observations_);
  bound.most += passed - std::max(std::min(passed, 2.0 * slip - passed), 0.0);
  return bound;
}

// Each value stays within some of its SDs and within its limits.
std::vector<Bound> TapeNetwork::with_most_movement(std::vector<Bound> bounds) const {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const auto i = static_cast<std::size_t>(entry.name);
    const auto [value, sd] = observations_[i];
    if (sd == 0.0) continue;
    const double up = std::min(kSlipSd * sd, std::max(entry.most.number() - value, 0.0));
    const double down = std::min(kSlipSd * sd, std::max(value - entry.least.number(), 0.0));
    bounds.push_back({.terms = {{{i, 1.0}}}, .most = value + up});
    bounds.push_back({.terms = {{{i, -1.0}}}, .most = down - value});
  }
  return bounds;
}

std::vector<Bound> TapeNetwork::met(const Movement& movement) const {
  std::vector<Bound> met;
  for (std::size_t i = 0; i < bounds_.size(); ++i) {
    const double slip = kSlipSd * bounds_[i].sd(observations_);
    if (movement.push[i] > 0.0 || passed_by(bounds_[i]) > slip) met.push_back(bounds_[i]);
  }
  return met;
}

// "side length, scye depth and back waist length contradict each other by 12 mm", or that they
// would by what others move.
Wording TapeNetwork::contradiction(const Bound& bound) const {
  std::vector<std::string> names;
  for (const auto& [observation, times] : bound.terms) {
    if (times != 0.0) names.push_back(name_text(kMeasurements[observation].key));
  }
  const std::string last = names.back();
  names.pop_back();
  const std::string all = fmt::format("{} and {}", fmt::join(names, ", "), last);
  const double passed = passed_by(bound);
  if (passed <= 0.0) return all + " would come to contradict each other";
  return all + " contradict each other by " + Wording(Length::mm(passed));
}

// Of all that push it, that which does so most.
Wording TapeNetwork::why(std::size_t observation, const Movement& movement) const {
  const auto pull = [&](std::size_t i) {
    double times = 0.0;
    for (const Bound::Term& term : bounds_[i].terms) {
      if (term.observation == observation) times += term.times;
    }
    return std::abs(movement.push[i] * times);
  };
  std::size_t most = 0;
  for (std::size_t i = 1; i < bounds_.size(); ++i) {
    if (pull(i) > pull(most)) most = i;
  }
  return contradiction(bounds_[most]) + ", and each gives way by what its tape may err";
}

SettledTape TapeNetwork::settled() const {
  std::vector<Bound> bounds;
  for (const Bound& bound : bounds_) bounds.push_back(as_far_as_tapes_err(bound));
  const Movement movement = least_movement(observations_, with_most_movement(bounds));
  const Reliability shown = reliability(observations_, met(movement));
  SettledTape tape{body_, {}, {}};
  for (std::size_t i = 0; i < observations_.size(); ++i) {
    if (shown.redundancy[i] == 0.0 && movement.by[i] == 0.0) continue;
    const MeasurementName name = kMeasurements[i].name;
    const Measure by = measure_of(name, movement.by[i]);
    tape.body.measurements[name]->value += by;
    tape.contradicting.push_back(
        {name, body_[name], tape.body[name], shown.residual[i], shown.redundancy[i]});
    if (std::abs(movement.by[i]) > kMoved) tape.moved.push_back({name, by, why(i, movement)});
  }
  return tape;
}

// What moves by less is not told.
constexpr double kTold = 0.5;

std::string moved_row(const SettledMeasurement& one, Unit unit) {
  const Measure by = one.settled - one.taped;
  if (abs(by).number() < kTold) return "";
  const std::string sign = by.number() < 0.0 ? "-" : "+";
  return fmt::format("{:<26}{:>14}{:>14}{:>14}\n", name_text(info(one.name).key),
                     measure_text(one.taped, unit), measure_text(one.settled, unit),
                     sign + measure_text(abs(by), unit));
}

std::string one_is_a_slip(const SettledTape& tape) {
  std::vector<std::string> names;
  for (const SettledMeasurement& one : tape.contradicting) {
    names.push_back(name_text(info(one.name).key));
  }
  return fmt::format(
      "\nToo far from each other to be errors of the tape: {}.\nOne of them is a slip: take them "
      "again. The draft uses them as taped.\n",
      fmt::join(names, ", "));
}

}  // namespace

SettledTape settle_tape(const Body& body) {
  const TapeNetwork network(body);
  return network.agrees() ? SettledTape{body, {}, {}} : network.settled();
}

std::string settled_table(const SettledTape& tape, Unit unit) {
  if (tape.contradicting.empty()) return "";
  std::string rows;
  for (const SettledMeasurement& one : tape.contradicting) rows += moved_row(one, unit);
  if (rows.empty()) return one_is_a_slip(tape);
  return fmt::format(
             "\nThese contradict each other. The draft moves each by no more than its tape may "
             "err:\n"
             "{:<26}{:>14}{:>14}{:>14}\n",
             "", "taped", "used", "moved by") +
         rows;
}

}  // namespace blockwright
