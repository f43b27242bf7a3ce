#include "blockwright/measure/client.hpp"
#include "blockwright/measure/ease.hpp"
#include "blockwright/text/plain_text.hpp"
#include "client_keys.hpp"
#include "fitting_schema.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

Json reference(std::string_view definition) {
  return {{"$ref", "#/$defs/" + std::string(definition)}};
}

bool takes_fractions(MeasurementKind kind, Unit unit) {
  return unit == Unit::Inch && kind != MeasurementKind::Angle;
}

double in_file_unit(double value, MeasurementKind kind, Unit unit) {
  if (kind == MeasurementKind::Angle) return value;
  return unit == Unit::Cm ? Length::mm(value).cm() : Length::mm(value).inches();
}

// Limits of one number and of each number of a list, rounded inwards to hundredths.
Json limits(const MeasurementInfo& entry, Unit unit) {
  const double least = in_file_unit(entry.least, entry.kind, unit);
  const double most = in_file_unit(entry.most, entry.kind, unit);
  const Json bounds = {{"minimum", ceil_to_hundredth(least)},
                       {"maximum", floor_to_hundredth(most)}};
  Json result = reference(takes_fractions(entry.kind, unit) ? "inch_readings" : "readings");
  result.update(bounds);
  result["items"] = bounds;
  return result;
}

Json ease_limits(const MeasurementInfo& entry, Unit unit) {
  const double bound = floor_to_hundredth(in_file_unit(most_ease(entry.name), entry.kind, unit));
  Json result = reference(takes_fractions(entry.kind, unit) ? "inch_number" : "number");
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

Json tape_in(Unit unit) {
  return {
      {"properties", per_measurement([unit](const auto& entry) { return limits(entry, unit); })}};
}

Json ease_in(Unit unit) {
  return {{"properties",
           per_measurement([unit](const auto& entry) { return ease_limits(entry, unit); })}};
}

Json tape() {
  return {{"description",
           "Lengths in the file's unit, the shoulder slope in degrees. The waist is the natural "
           "waist, where a tied tape settles."},
          {"type", "object"},
          {"required", {"bust_girth"}},
          {"additionalProperties", false},
          {"properties", per_measurement([](const MeasurementInfo& entry) {
             return Json{{"title", entry.iso_term}, {"description", entry.how}};
           })}};
}

Json ease() {
  return {{"description",
           "What is added to the body's measure, in place of the default; on whole girths, widths "
           "and lengths in the file's unit, on the shoulder slope in degrees."},
          {"type", "object"},
          {"additionalProperties", false},
          {"properties", per_measurement([](const MeasurementInfo& entry) {
             return Json{{"title", entry.iso_term}};
           })}};
}

Json list_of(std::string_view item) {
  return {
      {"type", "array"}, {"minItems", 1}, {"maxItems", kMostReadings}, {"items", reference(item)}};
}

Json definitions() {
  return {{"number", {{"type", "number"}}},
          {"inch_number",
           {{"anyOf",
             {Json{{"type", "number"}},
              Json{{"description", "\"36\", \"36 1/2\" or \"1/2\"; halves down to 64ths"},
                   {"type", "string"},
                   {"pattern", "^-?([0-9]{1,4}|([0-9]{1,4} )?[0-9]{1,2}/(2|4|8|16|32|64))$"}}}}}},
          {"readings", {{"anyOf", {reference("number"), list_of("number")}}}},
          {"inch_readings", {{"anyOf", {reference("inch_number"), list_of("inch_number")}}}},
          {"tape_cm", tape_in(Unit::Cm)},
          {"tape_in", tape_in(Unit::Inch)},
          {"ease_cm", ease_in(Unit::Cm)},
          {"ease_in", ease_in(Unit::Inch)},
          {"fittings_cm", fittings_schema_in(Unit::Cm)},
          {"fittings_in", fittings_schema_in(Unit::Inch)}};
}

Json text_for_people(std::string_view description) {
  return {{"description", description}, {"type", "string"}, {"maxLength", kMostTextLength}};
}

Json session() {
  return {{"type", "object"},
          {"required", {"date", "tape"}},
          {"additionalProperties", false},
          {"properties",
           {{"date",
             {{"description", "Each session has a date of its own."},
              {"type", "string"},
              {"format", "date"},
              {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}}},
            {"by", text_for_people("Who held the tape.")},
            {"tape", tape()}}}};
}

Json name() {
  Json result = text_for_people("The person; printed on every piece.");
  result["pattern"] = "[^ ]";
  return result;
}

Json properties() {
  return {{"$schema", {{"type", "string"}}},
          {"format", {{"const", kClientFormat}}},
          {"name", name()},
          {"unit", {{"enum", {"cm", "in"}}}},
          {"sessions",
           {{"description", "Tape sessions; the newest is drafted unless a date is given."},
            {"type", "array"},
            {"minItems", 1},
            {"items", session()}}},
          {"ease", ease()},
          {"fittings", fittings_schema()}};
}

// The limits that hold if the file is in this unit.
Json if_unit(const std::string& unit) {
  return {{"if", {{"properties", {{"unit", {{"const", unit}}}}}}},
          {"then",
           {{"properties",
             {{"sessions", {{"items", {{"properties", {{"tape", reference("tape_" + unit)}}}}}}},
              {"ease", reference("ease_" + unit)},
              {"fittings", reference("fittings_" + unit)}}}}}};
}

}  // namespace

std::string client_schema() {
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"$id", "client.schema.json"},
                 {"title", "Client file"},
                 {"description", "One person: tape sessions, ease and fittings."},
                 {"type", "object"},
                 {"required", {"format", "name", "unit", "sessions"}},
                 {"additionalProperties", false},
                 {"properties", properties()},
                 {"allOf", {if_unit("cm"), if_unit("in")}},
                 {"$defs", definitions()}};
  return schema.dump(2) + '\n';
}

}  // namespace blockwright
