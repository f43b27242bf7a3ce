#include "blockwright/base/number_text.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/text/units.hpp"
#include "survey.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace blockwright {
namespace {

using enum MeasurementName;

// Two readings of a length differ by so much (the usual spread of readings): a neck that is odd by
// less doubts nothing.
constexpr Length kReadingsDiffer = Length::mm(5);
// Which of two lengths is doubted is clear if they lie apart by this many residual SDs. Ours.
constexpr double kClearlyFurther = 0.5;

// One of the two front lengths, and what all other tapes lead one to expect of it.
struct FrontLength {
  MeasurementName name;
  Measure taped;
  Expectation expected;
  double deepens;  // the neck, for a mm of the length

  [[nodiscard]] Measure excess() const { return taped - expected.value; }
  [[nodiscard]] double makes_deeper() const { return deepens * (excess() / expected.sd); }
};

std::vector<FrontLength> front_lengths(const Body& body) {
  const Regression others = learnt_from(body, {FrontWaistLength, SideNeckToWaist});
  const bool sure_of_both = body.sure(FrontWaistLength) && body.sure(SideNeckToWaist);
  std::vector<FrontLength> lengths;
  for (const MeasurementName name : {FrontWaistLength, SideNeckToWaist}) {
    if (!body.taped(name) || (body.sure(name) && !sure_of_both)) continue;
    lengths.push_back(
        {name, body[name], others.expected(name), name == SideNeckToWaist ? 1.0 : -1.0});
  }
  return lengths;
}

// The one further off to that side, or both if they are about equally far.
std::vector<FrontLength> doubted(std::vector<FrontLength> lengths, bool too_deep) {
  if (lengths.size() < 2) return lengths;
  const double side = too_deep ? 1.0 : -1.0;
  const double further = side * (lengths[0].makes_deeper() - lengths[1].makes_deeper());
  if (further >= kClearlyFurther) return {lengths[0]};
  if (further <= -kClearlyFurther) return {lengths[1]};
  return lengths;
}

std::string key_of(const FrontLength& length) { return std::string(info(length.name).key); }

Wording compared(const FrontLength& length) {
  const double off = length.excess() / length.expected.sd;
  return name_text(key_of(length)) + " was taped " + length.taped +
         "; the other measurements lead one to expect " + length.expected.value +
         ", give or take " + length.expected.sd + ". It is " + fixed(std::abs(off), 1) +
         " times that too " + (off > 0.0 ? "long" : "short") + ". ";
}

// What both must say: the neck with what was expected.
Wording with_expected(const std::vector<FrontLength>& lengths, Length asked) {
  Wording with = "With ";
  for (const FrontLength& length : lengths) {
    if (&length != &lengths.front()) with += " and ";
    with += length.expected.value;
    asked = asked - (length.deepens * length.excess()).length();
  }
  return with + " instead the front neck would be " + asked + " deep";
}

Wording neck_hint(const std::vector<FrontLength>& lengths) {
  Wording hint;
  for (const FrontLength& length : lengths) {
    hint +=
        "take " + name_text(key_of(length)) + " again: " + std::string(info(length.name).how) + " ";
  }
  const bool both = lengths.size() > 1;
  const MeasurementName first = lengths.front().name;
  const std::string other =
      name_text(info(first == FrontWaistLength ? SideNeckToWaist : FrontWaistLength).key);
  return hint + (both ? "If they come out the same, look at the neck base girth"
                      : "If it comes out the same, it is right: look at " + other +
                            " and neck base girth");
}

std::string joined(const std::vector<std::string>& keys) {
  return keys.size() > 1 ? keys[0] + ", " + keys[1] : keys[0];
}

}  // namespace

Problems judge_neck(const Body& body, const OddNeck& neck) {
  const bool too_deep = neck.asked > neck.most;
  const Length by = too_deep ? neck.asked - neck.most : neck.least - neck.asked;
  const std::vector<FrontLength> lengths = doubted(front_lengths(body), too_deep);
  if (by <= kReadingsDiffer || lengths.empty()) return {};
  Wording message = "the two front lengths ask for a front neck " + Wording(neck.asked) +
                    " deep; one of this girth is " + neck.least + " to " + neck.most + " deep. ";
  if (too_deep) message += "A deeper one runs nearly straight and turns at the front neck point. ";
  std::vector<std::string> keys;
  for (const FrontLength& length : lengths) {
    message += compared(length);
    keys.push_back(key_of(length));
  }
  return {{.severity = by > kFrontLengthsRepeat ? Severity::Warning : Severity::Note,
           .code = "measure.neck_depth",
           .where = joined(keys),
           .message = message + with_expected(lengths, neck.asked),
           .hint = neck_hint(lengths),
           .measurements = keys,
           .limit = {.least = neck.least, .most = neck.most}}};
}

}  // namespace blockwright
