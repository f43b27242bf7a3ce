#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"

#include <nlohmann/json.hpp>

#include <functional>
#include <map>
#include <type_traits>
#include <vector>

namespace blockwright {
namespace {

using Json = nlohmann::json;

constexpr const char* kFormat = "blockwright-job-1";

[[noreturn]] void refuse(const char* code, std::string_view file, const std::string& key,
                         const std::string& message, const std::string& hint) {
  const std::string where = std::string(file) + (key.empty() ? "" : ": " + key);
  throw InputError({Severity::Error, code, where, message, hint});
}

/// One key of a job file, read into a job.
using Reader = std::function<bool(const Json&, Job&)>;

Reader text_into(std::string Job::*member) {
  return [member](const Json& value, Job& job) {
    if (!value.is_string()) return false;
    job.*member = value.get<std::string>();
    return true;
  };
}

template <class Number>
Reader number_into(Number Job::*member) {
  return [member](const Json& value, Job& job) {
    if (!value.is_number()) return false;
    job.*member = value.get<double>();
    return true;
  };
}

Reader whole_number_into(int Job::*member) {
  return [member](const Json& value, Job& job) {
    if (!value.is_number_integer()) return false;
    job.*member = value.get<int>();
    return true;
  };
}

Reader flag_into(bool Job::*member) {
  return [member](const Json& value, Job& job) {
    if (!value.is_boolean()) return false;
    job.*member = value.get<bool>();
    return true;
  };
}

template <class Item>
Reader list_into(std::vector<Item> Job::*member) {
  return [member](const Json& value, Job& job) {
    if (!value.is_array()) return false;
    std::vector<Item> list;
    for (const Json& item : value) {
      const bool fits = std::is_same_v<Item, double> ? item.is_number() : item.is_string();
      if (!fits) return false;
      list.push_back(item.get<Item>());
    }
    job.*member = list;
    return true;
  };
}

const std::map<std::string, Reader>& readers() {
  static const std::map<std::string, Reader> known = {
      {"client", text_into(&Job::client)},
      {"session", text_into(&Job::session)},
      {"toile", whole_number_into(&Job::toile)},
      {"out", text_into(&Job::out)},
      {"style", text_into(&Job::style)},
      {"dart", list_into(&Job::dart)},
      {"to", list_into(&Job::to)},
      {"part", list_into(&Job::part)},
      {"angle", list_into(&Job::angle)},
      {"split", list_into(&Job::split)},
      {"hold_back", number_into(&Job::hold_back)},
      {"overlay", flag_into(&Job::overlay)},
      {"write", list_into(&Job::write)},
      {"paper", text_into(&Job::paper)},
      {"cut", text_into(&Job::cut)},
      {"unit", text_into(&Job::unit)},
      {"report", text_into(&Job::report)},
      {"allowance", number_into(&Job::allowance)},
      {"margin", number_into(&Job::margin)},
      {"overlap", number_into(&Job::overlap)},
      {"steps", flag_into(&Job::steps)},
  };
  return known;
}

std::string known_keys() {
  std::string keys = "format";
  for (const auto& [key, reader] : readers()) keys += ", " + key;
  return keys;
}

Json parsed(const std::string& text, std::string_view file) {
  constexpr int deepest = 8;
  const auto shallow = [&](int depth, Json::parse_event_t, Json&) {
    if (depth > deepest) {
      refuse("job.syntax", file, "", "the file is nested too deeply", "a job is one flat object");
    }
    return true;
  };
  try {
    return Json::parse(text, shallow);
  } catch (const Json::exception& error) {
    refuse("job.syntax", file, "", std::string("this is not JSON: ") + error.what(),
           "mend the file at the place named");
  }
}

}  // namespace

Job read_job(const std::string& text, std::string_view file, Job job) {
  const Json json = parsed(text, file);
  if (!json.is_object()) {
    refuse("job.type", file, "", "a job file holds one JSON object", "write { ... } round it");
  }
  if (!json.contains("format") || json["format"] != kFormat) {
    refuse("job.format", file, "format", "the format is missing or not known",
           std::string("write \"format\": \"") + kFormat + "\"");
  }
  for (const auto& [key, value] : json.items()) {
    if (key == "format") continue;
    const auto reader = readers().find(key);
    if (reader == readers().end()) {
      refuse("job.key", file, key, "this key is not known", "known are: " + known_keys());
    }
    if (!reader->second(value, job)) {
      refuse("job.type", file, key, "the value " + value.dump() + " is of the wrong type",
             "see docs/formats.md or `blockwright schema job`");
    }
  }
  return job;
}

}  // namespace blockwright
