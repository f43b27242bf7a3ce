#include "schema_tables.hpp"

#include "blockwright/measure/body.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/measure/typed_correction.hpp"
#include "client_file.hpp"

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kHundredths = 100.0;

double floor_to_hundredth(double value) { return std::floor(kHundredths * value) / kHundredths; }
double ceil_to_hundredth(double value) { return std::ceil(kHundredths * value) / kHundredths; }

Json reference(const std::string& definition) { return {{"$ref", "#/$defs/" + definition}}; }

double in_file_unit(double value, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return value;
  return unit == Unit::Cm ? Length::mm(value).cm() : Length::mm(value).inches();
}

// "inch_" where fractions may be written.
std::string prefix(MeasurementKind kind, Unit unit) {
  return unit == Unit::Inch && kind != MeasurementKind::Angle ? "inch_" : "";
}

// Limits of one number and of each number of a list, rounded inwards to hundredths.
Json limits(const MeasurementInfo& entry, Unit unit) {
  const Json bounds = {
      {"minimum", ceil_to_hundredth(in_file_unit(entry.least.number(), entry.kind, unit))},
      {"maximum", floor_to_hundredth(in_file_unit(entry.most.number(), entry.kind, unit))}};
  Json result = reference(prefix(entry.kind, unit) + "readings_or_null");
  result.update(bounds);
  result["items"] = bounds;
  return result;
}

Json ease_limits(const MeasurementInfo& entry, Unit unit) {
  const double bound =
      floor_to_hundredth(in_file_unit(most_ease(entry.name).number(), entry.kind, unit));
  Json result = reference(prefix(entry.kind, unit) + "number");
  result.update({{"minimum", -bound}, {"maximum", bound}});
  return result;
}

template <class Describe>
Json per_measurement(Describe describe) {
  Json properties = Json::object();
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    properties[std::string(entry.key)] = describe(entry);
  }
  return properties;
}

// Whether two pairs of words are described alike but for the place.
bool alike(const CorrectionWords& a, const CorrectionWords& b) {
  return a.action == b.action && a.readings == b.readings && a.must_say == b.must_say &&
         a.one_sided == b.one_sided;
}

// An action with the places where its amount is read in the same ways.
Json alternative(const CorrectionWords& words) {
  const std::string action(words.action);
  Json places = Json::array(), ways = Json::array(), required = Json::array({action});
  for (const CorrectionWords& other : correction_words()) {
    if (alike(other, words)) places.push_back(other.place);
  }
  for (const AmountAs as : words.readings) ways.push_back(amount_way(as).word);
  Json properties = {{action, {{"enum", places}}}, {"as", {{"enum", ways}}}};
  if (words.must_say) required.push_back("as");
  if (words.one_sided) {
    required.push_back("side");
    properties["side"] = {{"enum", {"left", "right"}}};
  }
  return {{"required", required}, {"properties", properties}};
}

Json alternatives() {
  Json list = Json::array();
  const std::vector<CorrectionWords>& all = correction_words();
  for (auto words = all.begin(); words != all.end(); ++words) {
    const bool is_new =
        std::none_of(all.begin(), words, [&](const auto& other) { return alike(other, *words); });
    if (is_new) list.push_back(alternative(*words));
  }
  return list;
}

std::string ways_text() {
  std::string all = "How the amount was read.";
  for (const auto& [as, word, meaning] : kAmountWays) {
    all.append(" ").append(word).append(": ").append(meaning).append(".");
  }
  return all;
}

// The actions first, then the keys of a correction that the file describes.
void put_in_corrections(Json& correction) {
  Json properties = Json::object();
  for (const std::string_view action : correction_actions()) {
    properties[std::string(action)] = {{"type", "string"}};
  }
  for (const std::string_view key : kCorrectionKeys) {
    properties[std::string(key)] = correction["properties"][std::string(key)];
  }
  properties["as"]["description"] = ways_text();
  properties["seen"]["maxLength"] = kMostNoteLength;
  correction["properties"] = properties;
  correction["oneOf"] = alternatives();
}

void put_in_limits(Json& definitions, Unit unit) {
  const std::string suffix = unit == Unit::Cm ? "_cm" : "_in";
  definitions["tape" + suffix]["properties"] =
      per_measurement([&](const auto& entry) { return limits(entry, unit); });
  definitions["ease" + suffix]["properties"] =
      per_measurement([&](const auto& entry) { return ease_limits(entry, unit); });
  Json& fitting = definitions["fittings" + suffix]["items"]["properties"];
  fitting["corrections"]["items"]["properties"]["by"]["maximum"] =
      floor_to_hundredth(in_file_unit(kMostCorrection.mm(), MeasurementKind::Length, unit));
}

}  // namespace

Json with_tables(Json client_schema) {
  Json& client = client_schema["properties"];
  client["sessions"]["items"]["properties"]["tape"]["properties"] =
      per_measurement([](const MeasurementInfo& entry) {
        return Json{{"title", entry.iso_term}, {"description", entry.how}};
      });
  client["sessions"]["items"]["properties"]["sure"]["items"]["enum"] = kMeasurementKeys;
  client["ease"]["properties"] = per_measurement([](const MeasurementInfo& entry) {
    return Json{{"title", entry.iso_term}};
  });
  Json& fitting = client["fittings"]["items"]["properties"];
  fitting["toile"]["maximum"] = kMostToiles;
  fitting["note"]["maxLength"] = kMostNoteLength;
  put_in_corrections(fitting["corrections"]["items"]);
  Json& definitions = client_schema["$defs"];
  put_in_limits(definitions, Unit::Cm);
  put_in_limits(definitions, Unit::Inch);
  for (const char* list : {"readings", "inch_readings"}) {
    definitions[list]["anyOf"][1]["maxItems"] = kMostReadings;
  }
  return client_schema;
}

}  // namespace blockwright
