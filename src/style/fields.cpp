#include "fields.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/text_place.hpp"

#include <cmath>
#include <vector>

namespace blockwright {
namespace {

using Json = nlohmann::json;

constexpr int kDeepest = 8;
constexpr std::size_t kLargest = std::size_t{1024} * 1024;
constexpr std::size_t kShownOfAValue = 40;

std::string shown(const Json& value) {
  std::string text = value.dump(-1, ' ', true, Json::error_handler_t::replace);
  if (text.size() > kShownOfAValue) text = text.substr(0, kShownOfAValue) + " ...";
  return text;
}

}  // namespace

void refuse_style(const char* code, std::string_view file, const std::string& key,
                  const std::string& message, const std::string& hint) {
  const std::string where = std::string(file) + (key.empty() ? "" : ": " + key);
  throw InputError({Severity::Error, code, where, message, hint});
}

Json parsed_style(const std::string& text, std::string_view file) {
  if (text.size() > kLargest) {
    refuse_style("style.syntax", file, "", "the file has more than 1 MiB", "is it a style file?");
  }
  std::vector<std::set<std::string>> keys;
  const auto watch = [&](int depth, Json::parse_event_t event, Json& found) {
    if (depth > kDeepest) {
      refuse_style("style.syntax", file, "", "the file is nested too deeply",
                   "a style is a flat list of steps");
    }
    if (event == Json::parse_event_t::object_start) keys.emplace_back();
    if (event == Json::parse_event_t::object_end) keys.pop_back();
    if (event == Json::parse_event_t::key && !keys.back().insert(found.get<std::string>()).second) {
      refuse_style("style.key", file, found.get<std::string>(), "this key stands twice",
                   "keep one of the two");
    }
    return true;
  };
  try {
    return Json::parse(text, watch);
  } catch (const Json::parse_error& error) {
    const std::size_t at = error.byte > 0 ? error.byte - 1 : 0;
    refuse_style("style.syntax", std::string(file) + ":" + line_and_column(text, at), "",
                 "this is not JSON; it goes wrong here",
                 "look there for a missing quote, comma or bracket");
  } catch (const Json::exception&) {
    refuse_style("style.syntax", file, "", "this is not JSON that can be read",
                 "look for numbers out of all range, or broken letters");
  }
}

Fields::Fields(const Json& object, std::string_view file, std::string path)
    : object_(object), file_(file), path_(std::move(path)) {
  if (!object.is_object()) {
    refuse_style("style.type", file, path_, shown(object) + " is not an object",
                 "write { ... } with the step's keys");
  }
}

std::string Fields::path_of(const std::string& key) const {
  return path_.empty() ? key : path_ + "." + key;
}

void Fields::refuse_type(const char* key, const Json& value, const char* wanted) const {
  refuse_style("style.type", file_, path_of(key), shown(value) + " is not " + wanted,
               "see docs/formats.md or `blockwright schema style`");
}

const Json* Fields::any(const char* key) {
  known_.insert(key);
  const auto it = object_.find(key);
  return it == object_.end() ? nullptr : &*it;
}

void Fields::require(const char* key) {
  if (any(key) != nullptr) return;
  refuse_style("style.key", file_, path_of(key), "this key is missing",
               "see docs/formats.md or `blockwright schema style`");
}

std::string Fields::text(const char* key) {
  require(key);
  const Json* value = any(key);
  if (!value->is_string()) refuse_type(key, *value, "a text in quotes");
  return value->get<std::string>();
}

std::string Fields::text_or(const char* key, const std::string& otherwise) {
  return any(key) == nullptr ? otherwise : text(key);
}

std::optional<double> Fields::number(const char* key) {
  const Json* value = any(key);
  if (value == nullptr) return std::nullopt;
  if (!value->is_number() || !std::isfinite(value->get<double>())) {
    refuse_type(key, *value, "a number");
  }
  return value->get<double>();
}

double Fields::required_number(const char* key) {
  require(key);
  return *number(key);
}

int Fields::whole_number_or(const char* key, int otherwise) {
  const Json* value = any(key);
  if (value == nullptr) return otherwise;
  const double found = *number(key);
  constexpr double most = 1e6;
  if (found != std::floor(found) || std::abs(found) > most) {
    refuse_type(key, *value, "a whole number");
  }
  return static_cast<int>(found);
}

std::optional<std::vector<double>> Fields::numbers(const char* key) {
  const Json* value = any(key);
  if (value == nullptr) return std::nullopt;
  if (!value->is_array()) refuse_type(key, *value, "a list of numbers");
  std::vector<double> list;
  for (const Json& one : *value) {
    if (!one.is_number()) refuse_type(key, one, "a number");
    list.push_back(one.get<double>());
  }
  return list;
}

bool Fields::flag_or(const char* key, bool otherwise) {
  const Json* value = any(key);
  if (value == nullptr) return otherwise;
  if (!value->is_boolean()) refuse_type(key, *value, "true or false");
  return value->get<bool>();
}

std::size_t Fields::one_of(const char* key, std::initializer_list<const char*> words) {
  const std::string found = text_or(key, *words.begin());
  std::string known;
  std::size_t i = 0;
  for (const char* word : words) {
    if (found == word) return i;
    known += (i++ == 0 ? "" : ", ") + std::string(word);
  }
  refuse_style("style.value", file_, path_of(key), "'" + found + "' is not known",
               "use one of: " + known);
}

void Fields::finish() const {
  for (const auto& [key, value] : object_.items()) {
    if (known_.count(key) != 0) continue;
    std::string keys;
    for (const std::string& known : known_) keys += (keys.empty() ? "" : ", ") + known;
    refuse_style("style.key", file_, path_of(key), "this key is not known", "known are: " + keys);
  }
}

}  // namespace blockwright
