#include "fitting_schema.hpp"

#include "blockwright/text/plain_text.hpp"
#include "client_keys.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace blockwright {
namespace {

constexpr double kHundredths = 100.0;

using Json = nlohmann::ordered_json;

Json text(std::string_view description, std::size_t most) {
  return {{"description", description}, {"type", "string"}, {"maxLength", most}};
}

Json words_of(const std::vector<AmountAs>& readings) {
  Json words = Json::array();
  for (const AmountAs as : readings) words.push_back(amount_word(as));
  return words;
}

// Whether two pairs are described alike but for the place.
bool alike(const CorrectionWords& a, const CorrectionWords& b) {
  return a.action == b.action && a.readings == b.readings && a.must_say == b.must_say &&
         a.one_sided == b.one_sided;
}

// The places of the pairs that are like this one.
Json places_alike(const CorrectionWords& words) {
  Json places = Json::array();
  for (const CorrectionWords& other : correction_words()) {
    if (alike(other, words)) places.push_back(other.place);
  }
  return places;
}

// An action with the places where its amount is read in the same ways.
Json alternative(const CorrectionWords& words) {
  const std::string action(words.action);
  Json required = Json::array({action});
  Json properties = {{action, {{"enum", places_alike(words)}}},
                     {"as", {{"enum", words_of(words.readings)}}}};
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
    const bool new_one =
        std::none_of(all.begin(), words, [&](const auto& other) { return alike(other, *words); });
    if (new_one) list.push_back(alternative(*words));
  }
  return list;
}

std::string ways_text() {
  std::string all = "How the amount was read.";
  for (const AmountAs as : kAmountWays) {
    all.append(" ").append(amount_word(as)).append(": ").append(amount_meaning(as)).append(".");
  }
  return all;
}

Json correction_properties() {
  Json properties = Json::object();
  for (const std::string_view action : correction_actions()) {
    properties[std::string(action)] = {{"type", "string"}};
  }
  properties["by"] = {{"description", "How much, in the file's unit, more than 0."}};
  properties["as"] = {{"description", ways_text()}};
  properties["side"] = {{"description", "The side of the body; both if it is not said."},
                        {"enum", {"both", "left", "right"}}};
  properties["seen"] = text("What was seen on the body.", kMostNoteLength);
  properties["new_tape"] = {
      {"description", "What becomes of it once a newer tape session already has it."},
      {"enum", {"keep", "drop"}}};
  properties["withdrawn"] = {{"description", "Kept, but not applied."}, {"type", "boolean"}};
  return properties;
}

Json correction() {
  return {{"description", "What is to be done, where and by how much: one action with its place."},
          {"type", "object"},
          {"required", {"by"}},
          {"additionalProperties", false},
          {"properties", correction_properties()},
          {"oneOf", alternatives()},
          {"if", {{"required", {"as"}}, {"properties", {{"as", {{"const", "whole_girth"}}}}}}},
          {"then", {{"properties", {{"side", {{"const", "both"}}}}}}}};
}

Json fitting_properties() {
  return {{"date",
           {{"type", "string"}, {"format", "date"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}}},
          {"toile",
           {{"description", "The number of the toile that was tried on."},
            {"type", "integer"},
            {"minimum", 1},
            {"maximum", kMostToiles}}},
          {"by", text("Who fitted.", kMostTextLength)},
          {"note", text("A note on the toile as a whole.", kMostNoteLength)},
          {"corrections", {{"type", "array"}, {"items", correction()}}}};
}

}  // namespace

double floor_to_hundredth(double value) { return std::floor(kHundredths * value) / kHundredths; }
double ceil_to_hundredth(double value) { return std::ceil(kHundredths * value) / kHundredths; }

Json fittings_schema() {
  return {{"description", "Fittings of toiles, in the order in which they were made."},
          {"type", "array"},
          {"items",
           {{"type", "object"},
            {"required", {"date", "toile"}},
            {"additionalProperties", false},
            {"properties", fitting_properties()}}}};
}

Json fittings_schema_in(Unit unit) {
  const Length most = Length::mm(kMostCorrection);
  const double bound = unit == Unit::Cm ? most.cm() : most.inches();
  const Json by = {{"$ref", unit == Unit::Cm ? "#/$defs/number" : "#/$defs/inch_number"},
                   {"exclusiveMinimum", 0},
                   {"maximum", floor_to_hundredth(bound)}};
  const Json corrections = {{"items", {{"properties", {{"by", by}}}}}};
  return {{"items", {{"properties", {{"corrections", corrections}}}}}};
}

}  // namespace blockwright
