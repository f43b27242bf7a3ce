#include "blockwright/report/tape_report.hpp"

#include "blockwright/base/printable.hpp"
#include "report_json.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

using TapeJson = nlohmann::ordered_json;

void put(TapeJson& row, const std::string& key, Measure value) {
  row[key + unit_suffix(value)] = rounded(value.number());
}

TapeJson taped_json(const Body& body) {
  TapeJson list = TapeJson::array();
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!body.taped(entry.name)) continue;
    TapeJson row = {{"name", entry.key}};
    put(row, "value", body[entry.name]);
    if (body.sure(entry.name)) row["sure"] = true;
    list.push_back(std::move(row));
  }
  return list;
}

TapeJson estimated_json(const Body& body) {
  TapeJson list = TapeJson::array();
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!body.has(entry.name) || body.taped(entry.name)) continue;
    TapeJson row = {{"name", entry.key}};
    put(row, "value", body[entry.name]);
    put(row, "doubt", body.measurements[entry.name]->doubt);
    if (body.measurements[entry.name]->extrapolated) row["extrapolated"] = true;
    list.push_back(std::move(row));
  }
  return list;
}

TapeJson slip_json(const LikelySlip& slip) {
  TapeJson row = {{"slip", slip.name}, {"words", slip.words}};
  row["values"] = list_of(slip.values, [](const SlippedValue& value) {
    TapeJson json = {{"name", info(value.name).key}};
    put(json, "read", value.read);
    put(json, "meant", value.meant);
    return json;
  });
  row["exact"] = slip.exact;
  row["off_sd"] = rounded(slip.off);
  row["gain"] = rounded(slip.gain);
  return row;
}

TapeJson changes_json(const TapeReport& report) {
  const TapeJson list = list_of(report.changes, [](const TapeChange& change) {
    TapeJson json = {{"name", info(change.name).key}};
    put(json, "by", change.by);
    return json;
  });
  return {{"since", report.since.empty() ? TapeJson(nullptr) : TapeJson(report.since)},
          {"measurements", list}};
}

TapeJson settled_json(const SettledMeasurement& one) {
  TapeJson json = {{"name", info(one.name).key}};
  put(json, "taped", one.taped);
  put(json, "settled", one.settled);
  json["residual_sd"] = rounded(one.residual);
  json["redundancy"] = rounded(one.redundancy);
  return json;
}

std::string contradictions_line(const TapeReport& report) {
  const std::size_t count = report.settled.contradicting.size();
  if (count == 0) return "";
  return fmt::format("{}; how that is settled: `blockwright tape {} --check --all`.\n",
                     count == 1 ? "1 measurement contradicts those that are sure"
                                : fmt::format("{} measurements contradict each other", count),
                     printable(report.file));
}

}  // namespace

TapeCounts counts_of(const Body& body) {
  TapeCounts counts;
  for (const MeasurementInfo& entry : kMeasurements) {
    if (!body.has(entry.name)) continue;
    ++(body.taped(entry.name) ? counts.taken : counts.estimated);
  }
  return counts;
}

std::string counts_text(const TapeCounts& counts) {
  return fmt::format("{} taken, {} estimated", counts.taken, counts.estimated);
}

std::string tape_text(const TapeReport& report) {
  std::string text = fmt::format("{}, session of {}: {}.\n", printable(report.client),
                                 report.session, counts_text(counts_of(report.body)));
  for (const Problem& problem : report.problems) text += to_text(problem) + "\n";
  if (report.problems.empty() && report.settled.contradicting.empty()) {
    const bool alone = counts_of(report.body).taken == 1;
    text += (alone ? "One measurement: there is nothing to compare it with.\n"
                   : "Nothing in it is unlikely. Only the body shows whether it is right.\n") +
            take_first_text(report.take_first);
  }
  return text + (report.in_full ? settled_table(report.settled, report.unit)
                                : contradictions_line(report));
}

std::string tape_json(const TapeReport& report) {
  return text_of(TapeJson{{"client", report.client},
                          {"session", report.session},
                          {"problems", problems_as_json(report.problems)},
                          {"taped", taped_json(report.body)},
                          {"estimated", estimated_json(report.body)},
                          {"slips", list_of(report.slips, slip_json)},
                          {"changes", changes_json(report)},
                          {"contradicting", list_of(report.settled.contradicting, settled_json)},
                          {"take_first", list_of(report.take_first, retake_json)}});
}

}  // namespace blockwright
