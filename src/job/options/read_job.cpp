#include "blockwright/job/options.hpp"
#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "option_words.hpp"

#include <sstream>

namespace blockwright {
namespace {

constexpr const char* kSchemaHint = "`blockwright schema job` says what each key takes";

// Its codes begin with "job.": docs/problems.md has them all.
constexpr JsonFileKind kJobFile{.codes = "job",
                                .format = "blockwright-job-1",
                                .holds = "a job file holds the options of one command",
                                .number = "write a number such as 20 or 0.5",
                                .name = "write a text in quotes"};

JsonKind json_kind(const Option& option) {
  if (is_number(option)) return JsonKind::Number;
  return option.shape.kind == OptionShape::Kind::Flag ? JsonKind::Boolean : JsonKind::Text;
}

OptionItem item_in(const JsonDocument& document, const JsonValue& value, const Option& option) {
  if (option.shape.kind == OptionShape::Kind::FlagOrText && value.kind == JsonKind::Boolean) {
    return value.flag;
  }
  const JsonKind kind = json_kind(option);
  expect(document, value, kind, kSchemaHint);
  if (kind == JsonKind::Boolean) return value.flag;
  if (kind == JsonKind::Number) return value.number;
  return value.text;
}

void read_option(const JsonDocument& document, const JsonValue& value, const Option& option,
                 const JobParts& parts) {
  std::vector<const JsonValue*> values = {&value};
  const bool one_of_list = option.rules.or_one && value.kind != JsonKind::List;
  if (option.shape.count == OptionShape::Count::List && !one_of_list) {
    expect(document, value, JsonKind::List, kSchemaHint);
    values.clear();
    for (std::size_t i = 0; i < value.children.size(); ++i) {
      values.push_back(&document.child(value, i));
    }
  }
  OptionItems items;
  for (const JsonValue* one : values) {
    items.push_back(item_in(document, *one, option));
    if (option.put(parts, {items.back()})) continue;
    refuse(document.code(is_number(option) ? "type" : "value"), document.where(*one),
           document.as_written(*one) + " is not " + kind_words(option),
           "use " + values_words(option));
  }
  option.put(parts, items);
}

OptionPlace place_in(const JsonDocument& document, const JsonValue& value) {
  OptionPlace place{document.where(value), {}};
  for (std::size_t i = 0; i < value.children.size(); ++i) {
    place.items.push_back(document.where(document.child(value, i)));
  }
  return place;
}

}  // namespace

void read_job_file(const std::string& text, std::string_view file, const JobOptions& options) {
  std::istringstream in(text);
  const JsonDocument document = JsonDocument::read(in, file, kJobFile);
  const JsonValue& root = document.root();
  std::vector<std::string_view> keys = {"format"};
  for (const Option& option : options.options) keys.push_back(option.name);
  check_format(document, keys);
  check_keys(document, root, keys);
  for (const Option& option : options.options) {
    const JsonValue* value = document.member(root, option.name);
    if (value == nullptr) continue;
    read_option(document, *value, option, options.parts);
    places_in(options)[command_line_name(option)] = place_in(document, *value);
  }
}

}  // namespace blockwright
