#include "blockwright/style/style.hpp"
#include "fields.hpp"

#include <algorithm>
#include <map>

namespace blockwright {
namespace {

using Json = nlohmann::json;

constexpr const char* kFormat = "blockwright-style-1";
constexpr double kMmPerCm = 10.0;
constexpr double kMmPerInch = 25.4;

/// Lengths of the file become millimetres.
struct Unit {
  double mm = kMmPerCm;
  [[nodiscard]] double operator()(double value) const { return mm * value; }
};

std::optional<double> length_of(Fields& fields, const char* key, const Unit& unit) {
  const auto value = fields.number(key);
  return value ? std::optional(unit(*value)) : std::nullopt;
}

StyleStep read_pivot(Fields& fields, const Unit& unit) {
  PivotMove move;
  move.dart = fields.text("dart");
  move.to = fields.text("to");
  move.part = fields.number_or("part", move.part);
  if (const auto angle = fields.number("angle")) move.angle = Angle::degrees(*angle);
  move.hold_back = length_of(fields, "hold_back", unit);
  return move;
}

StyleStep read_split(Fields& fields, const Unit& unit) {
  SplitMove move;
  move.dart = fields.text("dart");
  move.shares = fields.numbers("shares").value_or(move.shares);
  move.spacing = length_of(fields, "spacing", unit).value_or(move.spacing);
  move.group =
      fields.one_of("group", {"fanned", "parallel"}) == 0 ? DartGroup::Fanned : DartGroup::Parallel;
  return move;
}

StyleStep read_merge(Fields& fields, const Unit&) {
  return MergeMove{fields.text("dart"), fields.text("into")};
}

StyleStep read_dart_point(Fields& fields, const Unit& unit) {
  PointMove move;
  move.dart = fields.text("dart");
  move.hold_back = unit(fields.required_number("hold_back"));
  return move;
}

StyleStep read_press(Fields& fields, const Unit&) {
  using Towards = PressMove::Towards;
  constexpr Towards towards[] = {Towards::Centre, Towards::Side, Towards::Down, Towards::Up};
  const std::string dart = fields.text("dart");
  return PressMove{dart, towards[fields.one_of("towards", {"centre", "side", "down", "up"})]};
}

StyleStep read_gather(Fields& fields, const Unit& unit, Fullness::Kind kind) {
  GatherMove move;
  move.dart = fields.text("dart");
  move.kind = kind;
  move.over = length_of(fields, "over", unit).value_or(move.over);
  return move;
}

StyleStep read_gathers(Fields& fields, const Unit& unit) {
  return read_gather(fields, unit, Fullness::Kind::Gathers);
}
StyleStep read_ease(Fields& fields, const Unit& unit) {
  return read_gather(fields, unit, Fullness::Kind::Ease);
}

StyleStep read_spread(Fields& fields, const Unit& unit) {
  SpreadMove move;
  move.from = fields.text("from");
  move.to = fields.text("to");
  move.by = length_of(fields, "by", unit).value_or(move.by);
  move.lines = fields.whole_number_or("lines", 1);
  move.apart = length_of(fields, "apart", unit).value_or(move.apart);
  move.hinged = fields.flag_or("hinged", true);
  move.gathered = fields.flag_or("gathered", true);
  move.over = length_of(fields, "over", unit).value_or(move.over);
  return move;
}

StyleStep read_panel_seam(Fields& fields, const Unit&) {
  PanelSeam seam;
  seam.from = fields.text("from");
  seam.to = fields.text("to");
  seam.centre_panel = fields.text_or("centre_panel", "");
  seam.side_panel = fields.text_or("side_panel", "");
  return seam;
}

using StepReader = StyleStep (*)(Fields&, const Unit&);

const std::map<std::string, StepReader>& step_readers() {
  static const std::map<std::string, StepReader> readers = {
      {"pivot", read_pivot}, {"split", read_split},           {"merge", read_merge},
      {"press", read_press}, {"dart_point", read_dart_point}, {"gathers", read_gathers},
      {"ease", read_ease},   {"spread", read_spread},         {"panel_seam", read_panel_seam}};
  return readers;
}

std::string known_steps() {
  std::string names;
  for (const auto& [name, reader] : step_readers()) names += (names.empty() ? "" : ", ") + name;
  return names;
}

StyleStep read_step(const Json& json, std::string_view file, const std::string& path,
                    const Unit& unit) {
  if (!json.is_object() || json.size() != 1) {
    refuse_style("style.type", file, path, "a step is an object with one key, its name",
                 "write for example {\"pivot\": {\"dart\": \"front.shoulder\", \"to\": "
                 "\"front.side\"}}");
  }
  const std::string name = json.begin().key();
  const auto reader = step_readers().find(name);
  if (reader == step_readers().end()) {
    refuse_style("style.key", file, path + "." + name, "there is no such step",
                 "steps are: " + known_steps());
  }
  Fields fields(json.begin().value(), file, path + "." + name);
  StyleStep step = reader->second(fields, unit);
  fields.finish();
  return step;
}

// The name is printed on the first page.
void require_name(const std::string& name, std::string_view file) {
  constexpr std::size_t most = 100;
  const bool seen = name.find_first_not_of(' ') != std::string::npos;
  const bool control =
      std::any_of(name.begin(), name.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; });
  if (seen && !control && name.size() <= most) return;
  refuse_style("style.value", file, "name",
               control ? "the name has control characters"
                       : "the name has " + std::to_string(name.size()) + " bytes; 1 to " +
                             std::to_string(most) + " are allowed, not all of them spaces",
               "name the garment in a few words");
}

}  // namespace

Style read_style(const std::string& text, std::string_view file) {
  const Json json = parsed_style(text, file);
  Fields fields(json, file, "");
  const Json* format = fields.any("format");
  if (format == nullptr || *format != kFormat) {
    refuse_style("style.format", file, "format", "the format is missing or not known",
                 std::string("write \"format\": \"") + kFormat + "\"");
  }
  fields.any("$schema");
  Style style;
  style.name = fields.text("name");
  require_name(style.name, file);
  const Unit unit{fields.one_of("unit", {"cm", "in"}) == 0 ? kMmPerCm : kMmPerInch};
  const Json* steps = fields.any("steps");
  fields.finish();
  if (steps == nullptr || !steps->is_array()) {
    refuse_style("style.type", file, "steps", "a style needs a list of steps",
                 "write \"steps\": [ ... ]; it may be empty");
  }
  for (std::size_t i = 0; i < steps->size(); ++i) {
    style.steps.push_back(read_step((*steps)[i], file, "steps[" + std::to_string(i) + "]", unit));
  }
  return style;
}

}  // namespace blockwright
