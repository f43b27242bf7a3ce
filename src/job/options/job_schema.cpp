#include "blockwright/job/options.hpp"
#include "option_words.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;
using Kind = OptionShape::Kind;
using Count = OptionShape::Count;

Json number_schema(const Option& option) {
  const OptionLimits& limits = option.rules.limits;
  Json schema = {{"type", option.shape.kind == Kind::WholeNumber ? "integer" : "number"}};
  const char* least = limits.above ? "exclusiveMinimum" : "minimum";
  for (const auto& [key, limit] : {std::pair{least, limits.least}, {"maximum", limits.most}}) {
    if (!std::isfinite(limit)) continue;
    schema[key] = Json::parse(item_text(limit));
  }
  return schema;
}

Json item_schema(const Option& option) {
  if (is_number(option)) return number_schema(option);
  if (option.shape.kind == Kind::Flag) return {{"type", "boolean"}};
  if (option.shape.kind == Kind::FlagOrText) return {{"type", {"boolean", "string"}}};
  if (option.shape.words.empty()) {
    Json schema = {{"type", "string"}};
    if (!option.rules.pattern.empty()) schema["pattern"] = option.rules.pattern;
    return schema;
  }
  Json words = Json::array();
  if (option.shape.count == Count::OneOrNone || option.shape.gaps) words.push_back("");
  for (const OptionWord& word : option.shape.words) words.push_back(word.word);
  return {{"enum", words}};
}

Json value_schema(const Option& option) {
  if (option.shape.count != Count::List) return item_schema(option);
  Json schema = {{"type", "array"}, {"items", item_schema(option)}};
  if (!option.shape.words.empty() && !option.shape.gaps) schema["minItems"] = 1;
  if (option.rules.most_items > 0) schema["maxItems"] = option.rules.most_items;
  if (option.rules.or_one) return {{"anyOf", Json::array({schema, item_schema(option)})}};
  return schema;
}

std::string description_of(const Option& option, const JobParts& defaults) {
  std::string commands;
  for (const Command command : option.commands) {
    commands += (commands.empty() ? "" : ", ") + std::string(command_name(command));
  }
  return (option.commands.size() < kCommandCount ? commands + ": " : "") +
         help_of(option, defaults) + ".";
}

/// A key that is another thing in another command may be either.
void add_key(Json& properties, const Option& option, const Json& schema) {
  const std::string key(option.name);
  if (!properties.contains(key)) {
    properties[key] = schema;
  } else if (properties[key].contains("anyOf")) {
    properties[key]["anyOf"].push_back(schema);
  } else {
    properties[key] = {{"anyOf", Json::array({properties[key], schema})}};
  }
}

}  // namespace

std::string job_schema(const std::vector<Option>& table) {
  Job job;
  FitJob fit;
  CompareJob compare;
  BatchJob batch;
  TapeJob tape;
  const JobParts defaults{&job, &job, &job, &fit, &compare, &batch, &tape};
  Json properties = {{"format", {{"const", "blockwright-job-1"}}}};
  for (const Option& option : table) {
    Json schema = value_schema(option);
    schema["description"] = description_of(option, defaults);
    add_key(properties, option, schema);
  }
  const Json whole = {
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "blockwright job file"},
      {"description",
       "The options of one command as keys; what is given on the command line wins. Keys that the "
       "command does not have are refused."},
      {"type", "object"},
      {"required", {"format"}},
      {"additionalProperties", false},
      {"properties", properties}};
  return whole.dump(2) + "\n";
}

}  // namespace blockwright
