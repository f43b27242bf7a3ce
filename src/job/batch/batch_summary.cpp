#include "batch_line.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

}  // namespace

BatchSummary::BatchSummary(const BatchWatch& watch, const BatchJob& batch, std::size_t total)
    : watch_(watch), batch_(batch), total_(total) {
  if (is_json()) say("{\"clients\": [");
}

void BatchSummary::say(const std::string& text) const {
  if (watch_.say) watch_.say(text);
}

void BatchSummary::tell(const BatchLine& line) {
  ++counts_[state_of(line)];
  if (is_json()) {
    say((done_ == 0 ? "\n " : ",\n ") + on_one_line(line_json(line)));
  } else if (!batch_.quiet || line.failed()) {
    say(line_text(line));
  }
  ++done_;
  if (watch_.progress) watch_.progress(done_, total_, counts_["failed"]);
}

void BatchSummary::end(const std::vector<GoneClient>& gone) {
  is_json() ? end_json(gone) : end_text(gone);
}

void BatchSummary::end_text(const std::vector<GoneClient>& gone) {
  for (const GoneClient& client : gone) {
    say(fmt::format("gone      {}; its output stays: {}\n", client.client,
                    fmt::join(client.outputs, " ")));
  }
  say(fmt::format("{} {}: {} done, {} warned, {} unchanged, {} failed\n", done_,
                  done_ == 1 ? "client" : "clients", counts_["done"], counts_["warned"],
                  counts_["unchanged"], counts_["failed"]));
}

void BatchSummary::end_json(const std::vector<GoneClient>& gone) {
  Json list = Json::array();
  for (const GoneClient& client : gone) {
    list.push_back({{"file", client.client}, {"outputs", client.outputs}});
  }
  Json counts;
  for (const char* state : {"done", "warned", "unchanged", "failed"}) {
    counts[state] = counts_[state];
  }
  say("\n],\n\"gone\": " + on_one_line(list) + ",\n\"counts\": " + counts.dump() + "}\n");
}

}  // namespace blockwright
