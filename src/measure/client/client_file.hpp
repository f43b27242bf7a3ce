#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/measure/measurement_name.hpp"
#include "blockwright/text/json_document.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace blockwright {

/// The words of a client file, as the reader and the schema both use them.
inline constexpr std::string_view kClientFormat = "blockwright-client-1";

inline constexpr std::array<std::string_view, 7> kClientKeys{
    "format", "name", "unit", "sessions", "ease", "fittings", "$schema"};
inline constexpr std::array<std::string_view, 4> kSessionKeys{"date", "by", "tape", "sure"};
inline constexpr std::array<std::string_view, 5> kFittingKeys{"date", "toile", "by", "note",
                                                              "corrections"};
/// The keys of a correction beside its action.
inline constexpr std::array<std::string_view, 6> kCorrectionKeys{"by",   "as",        "side",
                                                                 "seen", "withdrawn", "new_tape"};
/// The key of "new_tape" where a sum was agreed to.
inline constexpr std::string_view kSettledKey = "settled";

/// Characters that a note may have.
inline constexpr std::size_t kMostNoteLength = 500;
/// Readings that one measurement of one session may have.
inline constexpr std::size_t kMostReadings = 20;
inline constexpr int kMostToiles = 99;

/// The keys of the measurements, in their order.
inline constexpr auto kMeasurementKeys = [] {
  std::array<std::string_view, kMeasurementCount> keys{};
  std::ranges::transform(kMeasurements, keys.begin(), &MeasurementInfo::key);
  return keys;
}();

/// The client file among the kinds of JSON files.
const JsonFileKind& client_file();

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
  Unit unit;                         ///< the file's
  std::optional<Measure> bust = {};  ///< of the same session, if it was read
  bool other_unit = false;  ///< most lengths of its session are what bodies have in the other unit
};

/// The readings: one number, one inch fraction, or a list of them; nothing for null.
std::optional<Readings> read_readings(const FileMeasurement& file, const JsonValue& value);
/// One override of the ease: never nothing.
std::optional<Measure> read_ease(const FileMeasurement& file, const JsonValue& value);

/// The keys of the measurements that the maker is sure of; "client.key" for what is no measurement,
/// "client.duplicate" for one named twice, "client.missing" for one that is not in the tape.
MeasurementSet read_sure(const JsonDocument& document, const JsonValue& list,
                         const PerMeasurement<Readings>& tape);

/// A text that may be left out.
std::string read_optional_text(const JsonDocument& document, const JsonValue& object,
                               std::string_view key, std::size_t most);

/// The amount of a correction, more than 0, and as it was given: "1.0 cm", "5/8 in".
struct GivenAmount {
  Length by;
  std::string given;
};
GivenAmount read_amount(const JsonDocument& document, const JsonValue& correction,
                        const CorrectionWords& words, Unit unit);

/// What remains of an amount, 0 or more; "client.range" for others, with the hint.
Length read_remaining(const JsonDocument& document, const JsonValue& value, Unit unit,
                      std::string_view hint);

/// How the amount was read; "client.amount" for a way that the correction does not have.
AmountAs read_way(const JsonDocument& document, const JsonValue& correction,
                  const CorrectionWords& words, BodySide side);

/// One correction of a fitting; "client.correction" where words are not those of
/// correction_words().
Correction read_correction(const JsonDocument& document, const JsonValue& value, Unit unit);

/// The fittings, in the file's order; "client.order" where toiles or dates fall.
std::vector<Fitting> read_fittings(const JsonDocument& document, const JsonValue& list, Unit unit);

}  // namespace blockwright
