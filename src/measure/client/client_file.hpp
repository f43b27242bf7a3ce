#pragma once

#include "blockwright/measure/measurement_name.hpp"
#include "blockwright/text/json_document.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace blockwright {

/// The words of a client file, as the reader and the schema both use them.
inline constexpr std::string_view kClientFormat = "blockwright-client-1";

inline constexpr std::array<std::string_view, 7> kClientKeys{
    "format", "name", "unit", "sessions", "ease", "fittings", "$schema"};
inline constexpr std::array<std::string_view, 3> kSessionKeys{"date", "by", "tape"};
inline constexpr std::array<std::string_view, 5> kFittingKeys{"date", "toile", "by", "note",
                                                              "corrections"};
/// The keys of a correction beside its action.
inline constexpr std::array<std::string_view, 6> kCorrectionKeys{"by",   "as",        "side",
                                                                 "seen", "withdrawn", "new_tape"};

/// Characters that a note may have.
inline constexpr std::size_t kMostNoteLength = 500;
/// Readings that one measurement of one session may have.
inline constexpr std::size_t kMostReadings = 20;
/// The most that one correction may be; our judgement: the largest of the fitting catalogue's
/// ranges is a waist of 6 cm, and a toile further off is drafted again.
inline constexpr Length kMostCorrection = Length::mm(100);
inline constexpr int kMostToiles = 99;

/// The keys of the measurements, in their order.
inline constexpr auto kMeasurementKeys = [] {
  std::array<std::string_view, kMeasurementCount> keys{};
  std::ranges::transform(kMeasurements, keys.begin(), &MeasurementInfo::key);
  return keys;
}();

/// The client file among the kinds of JSON files.
const JsonFileKind& client_file();

}  // namespace blockwright
