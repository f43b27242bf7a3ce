#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "client_file.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

constexpr const char* kSureHint =
    "write the keys of the measurements in a list: \"sure\": [\"across_back\"]";

MeasurementName read_key(const JsonDocument& document, const JsonValue& value) {
  expect(document, value, JsonKind::Text, kSureHint);
  if (const auto name = measurement_named(value.text)) return *name;
  refuse("client.key", document.where(value),
         fmt::format("{} is not the key of a measurement{}", document.as_written(value),
                     odd_letter_note(value.text)),
         did_you_mean(value.text, kMeasurementKeys));
}

}  // namespace

MeasurementSet read_sure(const JsonDocument& document, const JsonValue& list,
                         const PerMeasurement<Readings>& tape) {
  expect(document, list, JsonKind::List, kSureHint);
  MeasurementSet sure;
  for (std::size_t i = 0; i < list.children.size(); ++i) {
    const JsonValue& value = document.child(list, i);
    const MeasurementName name = read_key(document, value);
    if (sure.has(name)) {
      refuse("client.duplicate", document.where(value),
             fmt::format("{} is named twice", info(name).key), "keep one of the two");
    }
    if (!tape[name]) {
      refuse("client.missing", document.where(value),
             fmt::format("{} is not in this session's tape", info(name).key),
             "you can only be sure of what was taped: add it to the tape, or take it out here");
    }
    sure.add(name);
  }
  return sure;
}

}  // namespace blockwright
