#include "limits.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"

namespace blockwright {
namespace {

void require_between(const MeasurementInfo& entry, const char* what, double value, double least,
                     double most) {
  if (value >= least && value <= most) return;
  const auto amount = [&](double number) -> Wording {
    return entry.kind == MeasurementKind::Angle ? Wording(told_number(number, 2) + " degrees")
                                                : Length::mm(number);
  };
  throw InputError({Severity::Error,
                    "draft.range",
                    std::string(entry.key),
                    std::string(what) + " of " + amount(value) + " is out of range",
                    "use " + amount(least) + " to " + amount(most),
                    {std::string(entry.key)}});
}

}  // namespace

void require_limits(const Body& body, const Ease& ease) {
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const double most = most_ease(entry.name);
    require_between(entry, "an ease", ease[entry.name], -most, most);
    if (!body.has(entry.name)) continue;
    require_between(entry, "a measurement", body[entry.name], entry.least, entry.most);
  }
}

}  // namespace blockwright
