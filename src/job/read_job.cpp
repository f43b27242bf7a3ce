#include "blockwright/base/error.hpp"
#include "blockwright/base/text_place.hpp"
#include "blockwright/job/job.hpp"

#include <nlohmann/json.hpp>

#include <functional>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kFormat = "blockwright-job-1";

[[noreturn]] void refuse(const char* code, std::string_view file, const std::string& key,
                         const std::string& message, const std::string& hint) {
  const std::string where = std::string(file) + (key.empty() ? "" : ": " + key);
  throw InputError({Severity::Error, code, where, message, hint});
}

// One value of a job file; false where it is of another type.

bool read(const Json& json, std::string& value) {
  if (json.is_string()) value = json.get<std::string>();
  return json.is_string();
}

bool read(const Json& json, bool& value) {
  if (json.is_boolean()) value = json.get<bool>();
  return json.is_boolean();
}

bool read(const Json& json, double& value) {
  if (json.is_number()) value = json.get<double>();
  return json.is_number();
}

bool read(const Json& json, int& value) {
  if (!json.is_number_integer()) return false;
  const double number = json.get<double>();
  if (number < std::numeric_limits<int>::min() || number > std::numeric_limits<int>::max()) {
    return false;
  }
  value = json.get<int>();
  return true;
}

bool read(const Json& json, std::optional<double>& value) { return read(json, value.emplace()); }

template <class Item>
bool read(const Json& json, std::vector<Item>& value) {
  if (!json.is_array()) return false;
  std::vector<Item> list(json.size());
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (!read(json[i], list[i])) return false;
  }
  value = std::move(list);
  return true;
}

/// The keys of a job file for one command: each reads its value into the job.
template <class AnyJob>
using Keys = std::map<std::string, std::function<bool(const Json&, AnyJob&)>>;

template <class AnyJob, class Value>
std::function<bool(const Json&, AnyJob&)> into(Value AnyJob::*member) {
  return [member](const Json& json, AnyJob& job) { return read(json, job.*member); };
}

Keys<Job> keys_of(const Job& job) {
  Keys<Job> keys = {
      {"client", into(&Job::client)},
      {"session", into(&Job::session)},
      {"toile", into(&Job::toile)},
      {"out", into(&Job::out)},
      {"write", into(&Job::write)},
      {"paper", into(&Job::paper)},
      {"cut", into(&Job::cut)},
      {"unit", into(&Job::unit)},
      {"report", into(&Job::report)},
      {"allowance", into(&Job::allowance)},
      {"margin", into(&Job::margin)},
      {"overlap", into(&Job::overlap)},
      {"anonymous", into(&Job::anonymous)},
  };
  switch (job.command) {
    case Command::Draft:
      keys["steps"] = into(&Job::steps);
      break;
    case Command::Pivot:
      keys.merge(Keys<Job>{{"dart", into(&Job::dart)},
                           {"to", into(&Job::to)},
                           {"part", into(&Job::part)},
                           {"angle", into(&Job::angle)},
                           {"split", into(&Job::split)},
                           {"hold_back", into(&Job::hold_back)},
                           {"overlay", into(&Job::overlay)}});
      break;
    case Command::Adapt:
      keys.merge(Keys<Job>{{"style", into(&Job::style)}, {"overlay", into(&Job::overlay)}});
      break;
  }
  return keys;
}

/// Those of a draft or an adapt but the client, and the batch's own.
Keys<BatchJob> keys_of(const BatchJob&) {
  Keys<BatchJob> keys = {
      {"folder", into(&BatchJob::folder)}, {"clients", into(&BatchJob::clients)},
      {"jobs", into(&BatchJob::jobs)},     {"subfolders", into(&BatchJob::subfolders)},
      {"again", into(&BatchJob::again)},   {"shard", into(&BatchJob::shard)},
  };
  Job adapt;
  adapt.command = Command::Adapt;
  for (const auto& [key, reader] : keys_of(adapt)) {
    if (key == "client") continue;
    keys[key] = [reader = reader](const Json& json, BatchJob& batch) {
      return reader(json, batch.each);
    };
  }
  return keys;
}

Keys<FitJob> keys_of(const FitJob&) {
  return {
      {"client", into(&FitJob::client)}, {"add", into(&FitJob::add)},
      {"as", into(&FitJob::as)},         {"side", into(&FitJob::side)},
      {"seen", into(&FitJob::seen)},     {"date", into(&FitJob::date)},
      {"toile", into(&FitJob::toile)},   {"by", into(&FitJob::by)},
      {"note", into(&FitJob::note)},     {"undo", into(&FitJob::undo)},
      {"redo", into(&FitJob::redo)},     {"session", into(&FitJob::session)},
      {"unit", into(&FitJob::unit)},     {"report", into(&FitJob::report)},
      {"list", into(&FitJob::list)},     {"ask", into(&FitJob::ask)},
  };
}

Keys<CompareJob> keys_of(const CompareJob&) {
  return {
      {"client", into(&CompareJob::client)},    {"other", into(&CompareJob::other)},
      {"session", into(&CompareJob::sessions)}, {"toile", into(&CompareJob::toiles)},
      {"align", into(&CompareJob::align)},      {"out", into(&CompareJob::out)},
      {"write", into(&CompareJob::write)},      {"paper", into(&CompareJob::paper)},
      {"unit", into(&CompareJob::unit)},        {"report", into(&CompareJob::report)},
      {"margin", into(&CompareJob::margin)},    {"overlap", into(&CompareJob::overlap)},
  };
}

template <class AnyJob>
std::string names_of(const Keys<AnyJob>& keys) {
  std::string names = "format";
  for (const auto& [key, reader] : keys) names += ", " + key;
  return names;
}

// The keys are those of the one object that a job is: what stands deeper is of the wrong type.
Json parsed(const std::string& text, std::string_view file) {
  constexpr int deepest = 8;
  std::set<std::string> keys;
  const auto watch = [&](int depth, Json::parse_event_t event, Json& found) {
    if (depth > deepest) {
      refuse("job.syntax", file, "", "the file is nested too deeply", "a job is one flat object");
    }
    if (event == Json::parse_event_t::key && depth == 1 &&
        !keys.insert(found.get<std::string>()).second) {
      refuse("job.key", file, found.get<std::string>(), "this key stands twice",
             "keep one of the two");
    }
    return true;
  };
  try {
    return Json::parse(text, watch);
  } catch (const Json::parse_error& error) {
    const std::size_t at = error.byte > 0 ? error.byte - 1 : 0;
    refuse("job.syntax", std::string(file) + ":" + line_and_column(text, at), "",
           "this is not JSON; it goes wrong here",
           "look there for a missing quote, comma or bracket");
  } catch (const Json::exception&) {
    refuse("job.syntax", file, "", "this is not JSON that can be read",
           "look for numbers out of all range, or broken letters");
  }
}

void require_job(const Json& json, std::string_view file) {
  if (!json.is_object()) {
    refuse("job.type", file, "", "a job file holds one JSON object", "write { ... } round it");
  }
  if (!json.contains("format") || json["format"] != kFormat) {
    refuse("job.format", file, "format", "the format is missing or not known",
           std::string("write \"format\": \"") + kFormat + "\"");
  }
}

template <class AnyJob>
AnyJob read_any(const std::string& text, std::string_view file, AnyJob job) {
  const Json json = parsed(text, file);
  require_job(json, file);
  const Keys<AnyJob> keys = keys_of(job);
  for (const auto& [key, value] : json.items()) {
    if (key == "format") continue;
    const auto found = keys.find(key);
    if (found == keys.end()) {
      refuse("job.key", file, key, "this command has no such key", "known are: " + names_of(keys));
    }
    if (!found->second(value, job)) {
      refuse("job.type", file, key, "the value " + value.dump() + " is of the wrong type",
             "see docs/formats.md or `blockwright schema job`");
    }
  }
  return job;
}

}  // namespace

Job read_job(const std::string& text, std::string_view file, Job job) {
  return read_any(text, file, std::move(job));
}

FitJob read_fit_job(const std::string& text, std::string_view file, FitJob job) {
  return read_any(text, file, std::move(job));
}

CompareJob read_compare_job(const std::string& text, std::string_view file, CompareJob job) {
  return read_any(text, file, std::move(job));
}

BatchJob read_batch_job(const std::string& text, std::string_view file, BatchJob job) {
  return read_any(text, file, std::move(job));
}

}  // namespace blockwright
