#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/text/json_document.hpp"

namespace blockwright {

// The values of a client file. All throw InputError, with the codes "client.missing", "client.key",
// "client.type", "client.range", "client.date", "client.duplicate", "client.text", "client.size",
// and those that are named here.

/// How a number is written where one is read: the hints for a text in its place, and for nothing.
struct NumberHints {
  std::string_view cm = {}, inches = {}, degrees = {}, nothing = {};
};

/// The number as written: in the file's unit, or in degrees.
double read_number(const JsonDocument& document, const JsonValue& value, MeasurementKind kind,
                   Unit unit, const NumberHints& hints);

/// A measurement of a file that is being read.
struct FileMeasurement {
  const JsonDocument& document;
  const MeasurementInfo& entry;
  Unit unit;  ///< the file's
};

/// The readings: one number, one inch fraction, or a list of them.
Readings read_readings(const FileMeasurement& file, const JsonValue& value);
/// One override of the ease.
Measure read_ease(const FileMeasurement& file, const JsonValue& value);

/// A text that may be left out.
std::string read_optional_text(const JsonDocument& document, const JsonValue& object,
                               std::string_view key, std::size_t most);

/// The amount of a correction, more than 0.
Length read_amount(const JsonDocument& document, const JsonValue& correction,
                   const CorrectionWords& words, Unit unit);

/// How the amount was read; "client.amount" for a way that the correction does not have.
AmountAs read_way(const JsonDocument& document, const JsonValue& correction,
                  const CorrectionWords& words, BodySide side);

/// One correction of a fitting; "client.correction" where words are not those of
/// correction_words().
Correction read_correction(const JsonDocument& document, const JsonValue& value, Unit unit);

/// The fittings, in the file's order; "client.order" where toiles or dates fall.
std::vector<Fitting> read_fittings(const JsonDocument& document, const JsonValue& list, Unit unit);

}  // namespace blockwright
