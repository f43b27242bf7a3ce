#include "batch_work.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/base/printable.hpp"
#include "blockwright/report/report.hpp"
#include "blockwright/report/tape_report.hpp"
#include "blockwright/text/json_values.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

const Problem* worst_of(const Problems& problems) {
  const auto found =
      std::ranges::find_if(problems, [](const Problem& p) { return p.severity != Severity::Note; });
  return found == problems.end() ? nullptr : &*found;
}

/// "0.00 mm", or "0.000 in".
std::string accuracy_text(const RunSummary& summary) {
  return summary.unit == Unit::Cm ? fixed(summary.residual.mm(), 2) + " mm"
                                  : fixed(summary.residual.inches(), 3) + " in";
}

Limit limit_in(const Json& limit) {
  const auto end = [&](const std::string& name) -> std::optional<Measure> {
    if (limit.contains(name + "_mm")) return Length::mm(limit.at(name + "_mm"));
    if (limit.contains(name + "_deg")) return Measure::degrees(limit.at(name + "_deg"));
    return std::nullopt;
  };
  return {.least = end("least"), .most = end("most")};
}

Problems problems_in(const Json& list) {
  using Keys = std::vector<std::string>;
  Problems problems;
  for (const auto& item : list) {
    const std::string severity = item.at("severity");
    problems.push_back(
        {severity == severity_name(Severity::Note) ? Severity::Note : Severity::Warning,
         item.at("code"), item.at("where"), item.at("message").get<std::string>(),
         item.at("hint").get<std::string>(), item.value("measurements", Keys()),
         item.value("options", Keys()), limit_in(item.value("limit", Json::object()))});
  }
  return problems;
}

}  // namespace

std::string state_of(const BatchLine& line) {
  if (line.failed()) return "failed";
  if (line.unchanged) return "unchanged";
  return worst_of(line.result.problems) != nullptr ? "warned" : "done";
}

std::string line_text(const BatchLine& line) {
  const RunSummary& summary = line.result.summary;
  std::string text = fmt::format("{:<9} {}", state_of(line), shown_place(line.client));
  if (!line.style.empty()) text += ", " + shown_place(line.style);
  if (!summary.name.empty()) text += ": " + shown(summary.name, kMostTextLength);
  if (!line.failed()) {
    text += fmt::format("; {}; {}; measures back within {}; {} pages, {} files",
                        counts_text({summary.taken, summary.estimated}), printable(summary.darts),
                        accuracy_text(summary), summary.pages, line.result.files.size());
  }
  text += "\n";
  const Problem* problem = line.unchanged ? nullptr : worst_of(line.result.problems);
  return problem == nullptr ? text : text + "          " + to_text(*problem) + "\n";
}

Json line_json(const BatchLine& line) {
  const RunSummary& summary = line.result.summary;
  Json json = {{"file", line.client}, {"client", summary.name}};
  if (!line.style.empty()) json["style"] = line.style;
  json.update({{"state", state_of(line)},
               {"taken", summary.taken},
               {"estimated", summary.estimated},
               {"darts", summary.darts},
               {"residual_mm", rounded(summary.residual.mm())},
               {"pages", summary.pages},
               {"unit", unit_name(summary.unit)},
               {"files", line.result.files},
               {"problems", Json::parse(problems_json(line.result.problems))}});
  return json;
}

std::optional<BatchLine> read_line(const std::string& json) {
  try {
    const auto object = Json::parse(json);
    BatchLine line{object.at("file"), {}, object.value("style", "")};
    line.result.summary = {object.at("client"),
                           object.at("taken"),
                           object.at("estimated"),
                           object.at("darts"),
                           Length::mm(object.at("residual_mm")),
                           object.at("pages"),
                           object.at("unit") == unit_name(Unit::Inch) ? Unit::Inch : Unit::Cm};
    line.result.problems = problems_in(object.at("problems"));
    line.result.files = object.at("files").get<std::vector<std::string>>();
    return line;
  } catch (const nlohmann::json::exception&) {
    return std::nullopt;
  }
}

std::string on_one_line(const Json& json) {
  return printable(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

std::string as_in_line(const std::string& path) { return Json::parse(on_one_line(path)); }

BatchSummary::BatchSummary(const BatchWatch& watch, const BatchJob& batch, const BatchSize& size)
    : watch_(watch), batch_(batch), size_(size) {
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
  if (watch_.progress) watch_.progress(done_, size_.clients * size_.styles, counts_["failed"]);
}

void BatchSummary::end(const BatchEnd& end) { is_json() ? end_json(end) : end_text(end); }

void BatchSummary::end_text(const BatchEnd& end) {
  for (const GoneClient& client : end.gone) {
    std::string text = "gone      " + shown_place(client.client) + "; its output stays:";
    for (const std::string& output : client.outputs) text += " " + shown_place(output);
    say(text + "\n");
  }
  for (const NotRead& other : end.not_read) {
    say(fmt::format("not read  {}: {}\n", shown_place(other.path), other.reason));
  }
  const std::size_t not_read = end.not_read.size();
  say(fmt::format("{} {}{}: {} done, {} warned, {} unchanged, {} failed{}\n", size_.clients,
                  size_.clients == 1 ? "client" : "clients",
                  size_.styles == 1 ? "" : fmt::format(" in {} styles", size_.styles),
                  counts_["done"], counts_["warned"], counts_["unchanged"], counts_["failed"],
                  not_read == 0 ? "" : fmt::format("; {} not read", not_read)));
}

void BatchSummary::end_json(const BatchEnd& end) {
  Json gone = Json::array(), not_read = Json::array(), counts;
  for (const GoneClient& client : end.gone) {
    gone.push_back({{"file", client.client}, {"outputs", client.outputs}});
  }
  for (const NotRead& other : end.not_read) {
    not_read.push_back({{"file", other.path}, {"reason", other.reason}});
  }
  for (const char* state : {"done", "warned", "unchanged", "failed"}) {
    counts[state] = counts_[state];
  }
  counts["not_read"] = not_read.size();
  say("\n],\n\"gone\": " + on_one_line(gone) + ",\n\"not_read\": " + on_one_line(not_read) +
      ",\n\"counts\": " + counts.dump() + "}\n");
}

}  // namespace blockwright
