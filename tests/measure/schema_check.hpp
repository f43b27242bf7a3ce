#pragma once

#include <nlohmann/json.hpp>

#include <algorithm>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>

namespace blockwright {

/// Enough of JSON Schema (draft 2020-12) to check a client file against the published schema.
/// A keyword it does not know is an error, so nothing passes unlooked at.
class SchemaCheck {
 public:
  using Json = nlohmann::json;
  explicit SchemaCheck(Json schema) : root_(std::move(schema)) {}

  [[nodiscard]] bool accepts(const Json& value) const { return fits(root_, value); }

 private:
  [[nodiscard]] bool fits(const Json& schema, const Json& value) const {
    return std::ranges::all_of(schema.items(), [&](const auto& keyword) {
      return holds(keyword.key(), keyword.value(), schema, value);
    });
  }

  [[nodiscard]] bool holds(const std::string& keyword, const Json& rule, const Json& schema,
                           const Json& value) const {
    static const std::set<std::string> kNotes{"$schema", "$id",    "title", "description",
                                              "$defs",   "format", "then"};
    if (kNotes.contains(keyword)) return true;
    if (keyword == "$ref")
      return fits(root_.at(Json::json_pointer(rule.get<std::string>().substr(1))), value);
    if (keyword == "const") return value == rule;
    if (keyword == "enum") return std::ranges::find(rule, value) != rule.end();
    if (keyword == "type") return is_type(rule, value);
    if (keyword == "allOf") return count(rule, value) == rule.size();
    if (keyword == "anyOf") return count(rule, value) > 0;
    if (keyword == "oneOf") return count(rule, value) == 1;
    if (keyword == "if") return !fits(rule, value) || fits(schema.at("then"), value);
    if (value.is_number()) return number_holds(keyword, rule, value.get<double>());
    if (value.is_string()) return text_holds(keyword, rule, value.get<std::string>());
    if (value.is_array()) return list_holds(keyword, rule, value);
    if (value.is_object()) return object_holds(keyword, rule, schema, value);
    return true;
  }

  [[nodiscard]] std::size_t count(const Json& rules, const Json& value) const {
    return static_cast<std::size_t>(
        std::ranges::count_if(rules, [&](const Json& rule) { return fits(rule, value); }));
  }

  static bool is_type(const std::string& type, const Json& value) {
    if (type == "null") return value.is_null();
    if (type == "number") return value.is_number();
    if (type == "integer") return value.is_number_integer();
    if (type == "boolean") return value.is_boolean();
    if (type == "string") return value.is_string();
    if (type == "array") return value.is_array();
    if (type == "object") return value.is_object();
    throw std::logic_error("type " + type);
  }

  static bool number_holds(const std::string& keyword, const Json& rule, double value) {
    if (keyword == "exclusiveMinimum") return value > rule.get<double>();
    if (keyword == "minimum") return value >= rule.get<double>();
    if (keyword == "maximum") return value <= rule.get<double>();
    return for_other_types(keyword);
  }

  static bool text_holds(const std::string& keyword, const Json& rule, const std::string& value) {
    if (keyword == "maxLength") return value.size() <= rule.get<std::size_t>();
    if (keyword == "pattern") return std::regex_search(value, std::regex(rule.get<std::string>()));
    return for_other_types(keyword);
  }

  [[nodiscard]] bool list_holds(const std::string& keyword, const Json& rule,
                                const Json& value) const {
    if (keyword == "minItems") return value.size() >= rule.get<std::size_t>();
    if (keyword == "maxItems") return value.size() <= rule.get<std::size_t>();
    if (keyword == "uniqueItems")
      return std::set<Json>(value.begin(), value.end()).size() == value.size();
    if (keyword == "items") {
      return std::ranges::all_of(value, [&](const Json& item) { return fits(rule, item); });
    }
    return for_other_types(keyword);
  }

  [[nodiscard]] bool object_holds(const std::string& keyword, const Json& rule, const Json& schema,
                                  const Json& value) const {
    if (keyword == "required") {
      return std::ranges::all_of(rule, [&](const Json& key) { return value.contains(key); });
    }
    if (keyword == "properties") {
      return std::ranges::all_of(rule.items(), [&](const auto& property) {
        return !value.contains(property.key()) || fits(property.value(), value.at(property.key()));
      });
    }
    if (keyword == "additionalProperties") {
      return std::ranges::all_of(value.items(), [&](const auto& member) {
        return schema.at("properties").contains(member.key());
      });
    }
    return for_other_types(keyword);
  }

  static bool for_other_types(const std::string& keyword) {
    static const std::set<std::string> kKnown{
        "minimum",     "exclusiveMinimum", "maximum",    "maxLength",
        "pattern",     "minItems",         "maxItems",   "items",
        "uniqueItems", "required",         "properties", "additionalProperties"};
    if (!kKnown.contains(keyword)) throw std::logic_error("keyword " + keyword);
    return true;
  }

  Json root_;
};

}  // namespace blockwright
