#include "blockwright/base/error.hpp"
#include "blockwright/job/draft_job.hpp"

#include <nlohmann/json.hpp>

#include <functional>
#include <map>

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
using Reader = std::function<bool(const Json&, DraftJob&)>;

Reader text_into(std::string DraftJob::*member) {
  return [member](const Json& value, DraftJob& job) {
    if (!value.is_string()) return false;
    job.*member = value.get<std::string>();
    return true;
  };
}

Reader number_into(double DraftJob::*member) {
  return [member](const Json& value, DraftJob& job) {
    if (!value.is_number()) return false;
    job.*member = value.get<double>();
    return true;
  };
}

bool read_steps(const Json& value, DraftJob& job) {
  if (!value.is_boolean()) return false;
  job.steps = value.get<bool>();
  return true;
}

bool read_write(const Json& value, DraftJob& job) {
  if (!value.is_array()) return false;
  std::vector<std::string> kinds;
  for (const Json& kind : value) {
    if (!kind.is_string()) return false;
    kinds.push_back(kind.get<std::string>());
  }
  job.write = kinds;
  return true;
}

const std::map<std::string, Reader>& readers() {
  static const std::map<std::string, Reader> known = {
      {"client", text_into(&DraftJob::client)},
      {"session", text_into(&DraftJob::session)},
      {"out", text_into(&DraftJob::out)},
      {"write", read_write},
      {"paper", text_into(&DraftJob::paper)},
      {"cut", text_into(&DraftJob::cut)},
      {"unit", text_into(&DraftJob::unit)},
      {"report", text_into(&DraftJob::report)},
      {"allowance", number_into(&DraftJob::allowance)},
      {"margin", number_into(&DraftJob::margin)},
      {"overlap", number_into(&DraftJob::overlap)},
      {"steps", read_steps},
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

DraftJob read_job(const std::string& text, std::string_view file, DraftJob job) {
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
