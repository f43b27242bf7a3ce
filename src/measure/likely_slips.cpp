#include "blockwright/measure/likely_slips.hpp"

#include "slips.hpp"
#include "survey.hpp"
#include "tape_error.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using enum MeasurementName;

// A number misread by any amount, beside the slips of the table: its cost, and the usual size of it
// (SD). Ours.
constexpr double kMisreadCost = 7.0;
constexpr ByKind kMisreadBy{
    .girth = Length::mm(50), .length = Length::mm(40), .angle = Measure::degrees(8)};
// The bust is read with the most care: everything else is held against it. Ours.
constexpr double kBustCost = 3.0;
// A tape that is not drawn close or hangs at the back makes a girth larger by up to this. Ours.
constexpr Length kLoosest = Length::mm(80);
// Two gains that differ by less are the same but for rounding.
constexpr double kClearlyMore = 1e-9;

// What was taped and not set aside, against what the survey leads one to expect.
class Evidence {
 public:
  Evidence(const Body& body, const MeasurementSet& aside) {
    // Without the bust among them nothing says how far beyond the survey the others are.
    const bool has_bust = body.taped(BustGirth) && !aside.has(BustGirth);
    regression_ = Regression(has_bust ? beyond_survey(body[BustGirth]) : 0.0);
    for (const SurveyVariable& variable : survey_variables()) {
      if (!body.taped(variable.name) || aside.has(variable.name)) continue;
      regression_.learn(variable.name, body[variable.name]);
      taken_.push_back(variable.name);
    }
  }
  [[nodiscard]] const std::vector<MeasurementName>& taken() const { return taken_; }
  [[nodiscard]] bool has(MeasurementName name) const {
    return std::ranges::find(taken_, name) != taken_.end();
  }
  [[nodiscard]] const Regression& regression() const { return regression_; }

 private:
  std::vector<MeasurementName> taken_;
  Regression regression_;
};

// A way that several measurements move together: v'C^-1 v as a function of how far.
struct Direction {
  double slope = 0.0;      // d'C^-1 v
  double curvature = 0.0;  // d'C^-1 d

  [[nodiscard]] double best() const { return slope / curvature; }
  [[nodiscard]] double off() const { return slope / std::sqrt(curvature); }
  // What curing it by `by` gains.
  [[nodiscard]] double gain(double by) const { return (2.0 * slope - by * curvature) * by; }
  // What curing it gains if its size is free, round 0 with that SD (a normal prior, integrated).
  [[nodiscard]] double free_gain(double usual) const {
    const double looser = 1.0 / (usual * usual);
    return slope * slope / (curvature + looser) - std::log(1.0 + curvature / looser);
  }
};

using Parts = std::vector<CommonCause::Part>;

Direction direction_of(const Parts& parts, const Evidence& evidence) {
  Direction direction;
  for (const auto& [name, per_mm, may_stay] : parts) {
    direction.slope += per_mm * evidence.regression().pull(name);
    for (const auto& other : parts) {
      direction.curvature +=
          per_mm * other.per_mm * evidence.regression().precision({name, other.name});
    }
  }
  return direction;
}

// --- one value -------------------------------------------------------------------------------

struct Judged {
  const Session& session;
  const Body& body;
  Unit typed_in;

  [[nodiscard]] std::optional<Measure> bust() const {
    return body.taped(BustGirth) ? std::optional(body[BustGirth]) : std::nullopt;
  }
  [[nodiscard]] bool within_bust(MeasurementName name) const {
    return bust() && body[name] <= *bust();
  }
};

LikelySlip misread(MeasurementName name, const Judged& judged, const Direction& direction) {
  const Measure read = judged.body[name];
  const double by = direction.best();
  const bool loose = info(name).kind == MeasurementKind::Girth && by > 0.0 && by <= kLoosest.mm();
  LikelySlip slip{.name = loose ? "loose" : "misread"};
  slip.expected = read - measure_of(name, by);
  slip.doubt = measure_of(name, 1.0 / std::sqrt(direction.curvature));
  slip.values = {{name, read, slip.expected}};
  slip.off = std::abs(direction.off());
  slip.gain = direction.free_gain(kMisreadBy.of(name).number()) - kMisreadCost -
              (name == BustGirth ? kBustCost : 0.0);
  slip.fuller_waist = is_fuller_waist(name, read, judged.bust()) && by > 0.0;
  return slip;
}

// The same value, with a slip that says what was meant.
LikelySlip cured(LikelySlip slip, const Meant& meant, const Direction& direction) {
  SlippedValue& value = slip.values.front();
  value.meant = meant.value;
  slip.name = meant.slip->name;
  slip.words = meant.slip->words;
  slip.gain = direction.gain((value.read - meant.value).number()) - meant.slip->cost;
  slip.exact = true;
  slip.fuller_waist = false;
  return slip;
}

LikelySlip likeliest_of(MeasurementName name, const Judged& judged, const Direction& direction) {
  LikelySlip off = misread(name, judged, direction);
  const Readings& readings = *judged.session.tape[name];
  std::vector<Meant> meant = possibly_meant(info(name), written_of(readings, judged.typed_in));
  if (off.fuller_waist) meant = meant_of_fuller_waist(std::move(meant), judged.within_bust(name));
  const auto best = likeliest(meant, {off.expected, off.doubt});
  if (!best) return off;
  LikelySlip exact = cured(off, *best, direction);
  return exact.gain > off.gain || off.fuller_waist ? exact : off;
}

// --- several together ------------------------------------------------------------------------

Parts taken_parts(const CommonCause& cause, const Evidence& evidence) {
  Parts parts;
  std::ranges::copy_if(cause.parts, std::back_inserter(parts),
                       [&](const CommonCause::Part& part) { return evidence.has(part.name); });
  return parts;
}

LikelySlip together(const CommonCause& cause, const Parts& parts, const Judged& judged,
                    const Direction& direction) {
  const double by = direction.best();
  LikelySlip slip{.name = cause.name,
                  .words = std::string(by > 0.0 ? cause.more : cause.less),
                  .cure = cause.cure};
  for (const auto& [name, per_mm, may_stay] : parts) {
    const Measure read = judged.body[name];
    slip.values.push_back({name, read, read - measure_of(name, per_mm * by)});
  }
  slip.off = std::abs(direction.off());
  slip.gain = direction.free_gain(cause.usual.mm()) - cause.cost;
  return slip;
}

// --- the likeliest ---------------------------------------------------------------------------

void keep_likelier(std::optional<LikelySlip>& best, LikelySlip slip) {
  if (!best || slip.gain > best->gain + kClearlyMore) best = std::move(slip);
}

// One value alone contradicts nothing. From the last measurement to the first, so that of two that
// contradict each other equally the later is doubted.
std::optional<LikelySlip> likeliest_slip(const Judged& judged, const Evidence& evidence) {
  std::optional<LikelySlip> best;
  if (evidence.taken().size() < 2) return best;
  for (std::size_t i = evidence.taken().size(); i-- > 0;) {
    const MeasurementName name = evidence.taken()[i];
    const Direction direction = direction_of({{name, 1.0}}, evidence);
    if (std::abs(direction.off()) <= kDoubtfulSd) continue;
    keep_likelier(best, likeliest_of(name, judged, direction));
  }
  for (const CommonCause& cause : common_causes()) {
    const Parts parts = taken_parts(cause, evidence);
    if (parts.size() < 2) continue;
    const Direction direction = direction_of(parts, evidence);
    const bool happens = !(direction.best() > 0.0 ? cause.more : cause.less).empty();
    if (!happens || std::abs(direction.off()) <= cause.gate) continue;
    keep_likelier(best, together(cause, parts, judged, direction));
  }
  return best;
}

bool is_sure(const LikelySlip& slip, const Body& body) {
  return std::ranges::any_of(slip.values, [&](const auto& value) { return body.sure(value.name); });
}

// Whether a slip of the pen would explain that the value is odd.
bool is_miswritten(MeasurementName name, const Judged& judged, const Evidence& evidence) {
  const LikelySlip odd = misread(name, judged, direction_of({{name, 1.0}}, evidence));
  std::vector<Meant> meant =
      possibly_meant(info(name), written_of(*judged.session.tape[name], judged.typed_in));
  meant = meant_of_fuller_waist(std::move(meant), judged.within_bust(WaistGirth));
  return odd.off > kDoubtfulSd && likeliest(meant, {odd.expected, odd.doubt}).has_value();
}

// A fuller waist than the survey's women have, where neither it nor the bust was written wrong: it
// says nothing about the others, nor they about it.
std::optional<LikelySlip> fuller_waist(const Judged& judged) {
  if (!judged.body.taped(WaistGirth) || !judged.bust()) return std::nullopt;
  if (!is_fuller_waist(WaistGirth, judged.body[WaistGirth], judged.bust())) return std::nullopt;
  const Evidence all(judged.body, {});
  for (const MeasurementName name : {WaistGirth, BustGirth}) {
    if (is_miswritten(name, judged, all)) return std::nullopt;
  }
  return misread(WaistGirth, judged, direction_of({{WaistGirth, 1.0}}, all));
}

// A waist larger than the bust is noted by judge() as a build.
bool is_worth_a_note(const LikelySlip& waist, const Judged& judged) {
  return waist.fuller_waist && waist.off > kDoubtfulSd && !is_sure(waist, judged.body) &&
         waist.values.front().read < *judged.bust();
}

}  // namespace

std::vector<LikelySlip> likely_slips(const Session& session, const Body& body, Unit typed_in) {
  const Judged judged{session, body, typed_in};
  std::vector<LikelySlip> slips;
  MeasurementSet aside;
  const auto waist = fuller_waist(judged);
  if (waist) aside.add(WaistGirth);
  while (auto slip = likeliest_slip(judged, Evidence(body, aside))) {
    for (const SlippedValue& value : slip->values) aside.add(value.name);
    if (!is_sure(*slip, body)) slips.push_back(*std::move(slip));
  }
  if (waist && is_worth_a_note(*waist, judged)) slips.push_back(*waist);
  return slips;
}

}  // namespace blockwright
