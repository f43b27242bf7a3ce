#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "read_wearing_ease.hpp"
#include "steps.hpp"

#include <array>
#include <sstream>

namespace blockwright {
namespace {

constexpr JsonFileKind kStyleFile{.codes = "style",
                                  .format = "blockwright-style-1",
                                  .holds = "a style file holds the steps of one garment",
                                  .number = "write an amount that cloth can have: 2.5",
                                  .name = "name the garment in a few words"};
constexpr std::array<std::string_view, 6> kStyleKeys{"format",       "name",  "unit",
                                                     "wearing_ease", "steps", "$schema"};
constexpr std::array<std::string_view, 2> kUnits{"cm", "in"};
constexpr std::array<double, 2> kMmPerUnit{10.0, 25.4};

StyleStep step_named(const JsonDocument& document, const JsonValue& member) {
  std::vector<std::string_view> names;
  for (StyleStep& step : step_of_each_name()) {
    names.push_back(row_of(step).name);
    if (names.back() == member.key) return step;
  }
  refuse(document.code("key"), document.where_key(member), "there is no such step",
         did_you_mean(member.key, names));
}

StyleStep read_step(const JsonDocument& document, const JsonValue& json, double unit) {
  if (json.kind != JsonKind::Object || json.children.size() != 1) {
    refuse(document.code("type"), document.where(json),
           "a step is an object with one key, its name",
           R"(write for example {"pivot": {"dart": "front.shoulder", "to": "front.side"}})");
  }
  const JsonValue& keys = document.child(json, 0);
  StyleStep step = step_named(document, keys);
  const StepRow row = row_of(step);
  expect(document, keys, JsonKind::Object, "write { ... } with the step's keys");
  std::vector<std::string_view> names;
  for (const StepKey& key : row.keys) names.push_back(key.name);
  names.push_back(kWhereThere);
  check_keys(document, keys, names);
  for (const StepKey& key : row.keys) {
    if (key.required) required(document, keys, key.name, "the step cannot do without it");
    const JsonValue* value = document.member(keys, key.name);
    if (value != nullptr) key.read(document, *value, unit);
  }
  return step;
}

bool is_where_there(const JsonDocument& document, const JsonValue& keys) {
  bool where_there = false;
  const JsonValue* value = document.member(keys, kWhereThere);
  if (value != nullptr) read_value(document, *value, where_there);
  return where_there;
}

StepPlace step_place(const JsonDocument& document, const JsonValue& keys) {
  StepPlace place{document.where(keys), {}};
  for (std::size_t i = 0; i < keys.children.size(); ++i) {
    const JsonValue& value = document.child(keys, i);
    place.keys.emplace(value.key, document.where(value));
  }
  return place;
}

}  // namespace

Style read_style(const std::string& text, std::string_view file) {
  std::istringstream in(text);
  const JsonDocument document = JsonDocument::read(in, file, kStyleFile);
  const JsonValue& root = document.root();
  check_format(document, kStyleKeys);
  check_keys(document, root, kStyleKeys);
  Style style;
  style.name = read_name(document, required(document, root, "name", "name the garment"));
  const JsonValue* unit = document.member(root, "unit");
  const std::size_t unit_read = unit == nullptr ? 0 : read_word(document, *unit, kUnits);
  const double mm = kMmPerUnit.at(unit_read);
  if (const JsonValue* ease = document.member(root, "wearing_ease")) {
    style.wearing_ease = read_wearing_ease(document, *ease, {static_cast<Unit>(unit_read), mm});
    style.wearing_ease_place = step_place(document, *ease);
  }
  const std::string hint = "write \"steps\": [ ... ]; it may be empty";
  const JsonValue& steps = required(document, root, "steps", hint);
  expect(document, steps, JsonKind::List, hint);
  for (std::size_t i = 0; i < steps.children.size(); ++i) {
    const JsonValue& step = document.child(steps, i);
    style.steps.push_back(read_step(document, step, mm));
    const JsonValue& keys = document.child(step, 0);
    style.places.push_back(step_place(document, keys));
    if (is_where_there(document, keys)) style.where_there.insert(i);
  }
  return style;
}

}  // namespace blockwright
