#include "support/planted_slips.hpp"

#include "blockwright/base/number_text.hpp"
#include "slips.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

double value_in(const Session& session, MeasurementName name) {
  return session.tape[name]->median().number();
}

void put(Session& session, MeasurementName name, double value) {
  session.tape[name] = Readings{{measure_of(name, value)}};
}

bool concerns(const LikelySlip& slip, const std::vector<MeasurementName>& moved) {
  if (slip.values.size() != moved.size()) return false;
  return std::ranges::all_of(slip.values, [&](const SlippedValue& value) {
    return std::ranges::find(moved, value.name) != moved.end();
  });
}

bool are_alike(const LikelySlip& a, const LikelySlip& b) {
  return std::ranges::equal(a.values, b.values, {}, &SlippedValue::name, &SlippedValue::name);
}

// What the reader of a client file says of a value that no body has.
SlipRate refused(const PlantedSlip& planted, const Session& before) {
  const MeasurementName name = planted.moved.front();
  const Written written = written_of(*planted.session.tape[name], Unit::Cm);
  const std::string hint = range_hint(
      info(name), written,
      name == BustGirth ? std::nullopt : std::optional(before.tape[BustGirth]->median()));
  SlipRate rate{.planted = 1, .caught = 1, .right = 1};
  for (const Meant& meant : possibly_meant(info(name), written)) {
    if (meant.slip->name != planted.name) continue;
    if (hint.find(meant.slip->words) != std::string::npos) rate.named = 1;
  }
  return rate;
}

SlipRate told(const PlantedSlip& planted, const Session& before) {
  const auto slips_before = likely_slips(before, fill_in(before), Unit::Cm);
  const auto slips = likely_slips(planted.session, fill_in(planted.session), Unit::Cm);
  SlipRate rate{.planted = 1};
  for (const LikelySlip& slip : slips) {
    const bool old = std::ranges::any_of(
        slips_before, [&](const LikelySlip& other) { return are_alike(slip, other); });
    if (old && !concerns(slip, planted.moved)) continue;
    rate.caught = 1;
    rate.right = concerns(slip, planted.moved) ? 1 : 0;
    rate.named = rate.right == 1 && slip.name == planted.name ? 1 : 0;
    return rate;
  }
  return rate;
}

bool is_refused(const PlantedSlip& planted) {
  const MeasurementName name = planted.moved.front();
  return !info(name).allows(planted.session.tape[name]->median());
}

double cm_of(MeasurementName name, double number) {
  return info(name).kind == MeasurementKind::Angle ? number : 0.1 * number;
}

double number_of(MeasurementName name, double cm) {
  return info(name).kind == MeasurementKind::Angle ? cm : 10.0 * cm;
}

std::vector<double> swaps_of(const std::string& typed) {
  std::vector<double> swaps;
  for (std::size_t i = 0; i + 1 < typed.size(); ++i) {
    std::string other = typed;
    const std::size_t next = typed[i + 1] == '.' ? i + 2 : i + 1;
    if (typed[i] == '.' || next >= typed.size() || typed[i] == typed[next]) continue;
    std::swap(other[i], other[next]);
    if (other.front() == '0') continue;  // nobody writes that
    swaps.push_back(std::stod(other));
  }
  return swaps;
}

}  // namespace

void SlipRate::add(const SlipRate& other) {
  planted += other.planted;
  caught += other.caught;
  right += other.right;
  named += other.named;
}

SlipRate rate_of(const std::vector<Session>& people, const PlantSlip& plant) {
  SlipRate all;
  for (std::size_t i = 0; i < people.size(); ++i) {
    const auto planted = plant(people[i], i);
    if (!planted) continue;
    all.add(is_refused(*planted) ? refused(*planted, people[i]) : told(*planted, people[i]));
  }
  return all;
}

PlantSlip off_by(MeasurementName name, double by) {
  return [=](const Session& person, std::size_t i) -> std::optional<PlantedSlip> {
    PlantedSlip planted{"", {name}, person};
    put(planted.session, name, value_in(person, name) + (i % 2 == 0 ? by : -by));
    return planted;
  };
}

PlantSlip digits_swapped(MeasurementName name) {
  return [=](const Session& person, std::size_t i) -> std::optional<PlantedSlip> {
    const auto swaps = swaps_of(trimmed(cm_of(name, value_in(person, name)), 1));
    if (swaps.empty()) return std::nullopt;
    PlantedSlip planted{"swapped_digits", {name}, person};
    put(planted.session, name, number_of(name, swaps[i % swaps.size()]));
    return planted;
  };
}

PlantSlip in_inches(MeasurementName name) {
  return [=](const Session& person, std::size_t) -> std::optional<PlantedSlip> {
    if (info(name).kind == MeasurementKind::Angle) return std::nullopt;
    PlantedSlip planted{"inches", {name}, person};
    const double inches = std::round(8.0 * value_in(person, name) / 25.4) / 8.0;
    put(planted.session, name, 10.0 * inches);
    return planted;
  };
}

PlantSlip waist_low(double by) {
  return [=](const Session& person, std::size_t) -> std::optional<PlantedSlip> {
    PlantedSlip planted{"waist_level", {}, person};
    for (const MeasurementName name :
         {BackWaistLength, FrontWaistLength, SideNeckToWaist, SideLength, WaistToHip}) {
      if (!person.tape[name]) continue;
      planted.moved.push_back(name);
      put(planted.session, name, value_in(person, name) + (name == WaistToHip ? -by : by));
    }
    return planted;
  };
}

}  // namespace blockwright
