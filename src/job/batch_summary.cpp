#include "batch_summary.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

std::string on_one_line(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

BatchSummary::BatchSummary(const BatchWatch& watch, bool json, std::size_t total)
    : watch_(watch), json_(json), total_(total) {
  if (json_) say("{\"clients\": [");
}

void BatchSummary::say(const std::string& text) const {
  if (watch_.say) watch_.say(text);
}

void BatchSummary::tell(const BatchLine& line) {
  ++counts_[state_of(line)];
  if (json_) {
    say((done_ == 0 ? "\n " : ",\n ") + on_one_line(line_json(line)));
  } else if (!watch_.quiet || line.failed) {
    say(line_text(line));
  }
  ++done_;
  if (watch_.progress) watch_.progress(done_, total_, counts_["failed"]);
}

void BatchSummary::end(const std::vector<DoneRecord>& gone) {
  json_ ? end_json(gone) : end_text(gone);
}

void BatchSummary::end_text(const std::vector<DoneRecord>& gone) {
  for (const DoneRecord& record : gone) {
    std::string names;
    for (const auto& output : record.outputs) names += " " + output.name;
    say("gone      " + record.client + "; its output stays:" + names + "\n");
  }
  say(fmt::format("{} {}: {} done, {} warned, {} unchanged, {} failed\n", done_,
                  done_ == 1 ? "client" : "clients", counts_["done"], counts_["warned"],
                  counts_["unchanged"], counts_["failed"]));
}

void BatchSummary::end_json(const std::vector<DoneRecord>& gone) {
  Json list = Json::array();
  for (const DoneRecord& record : gone) {
    Json names = Json::array();
    for (const auto& output : record.outputs) names.push_back(output.name);
    list.push_back({{"file", record.client}, {"outputs", names}});
  }
  Json counts;
  for (const char* state : {"done", "warned", "unchanged", "failed"}) {
    counts[state] = counts_[state];
  }
  say("\n],\n\"gone\": " + on_one_line(list) + ",\n\"counts\": " + counts.dump() + "}\n");
}

}  // namespace blockwright
