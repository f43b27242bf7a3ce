#include "report_json.hpp"

#include "problems_as_json.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

Json measure_back_list(const BlockRun& run) {
  Json list = Json::array();
  for (const MeasureBack& m : run.checks.measure_back) {
    const bool angle = info(m.name).kind == MeasurementKind::Angle;
    const std::string unit = angle ? "_deg" : "_mm";
    Json row = {{"name", info(m.name).key},
                {"source", m.source == Source::Taped ? "taped" : "estimated"},
                {"body" + unit, rounded(m.body)},
                {"ease" + unit, rounded(m.ease)},
                {"pattern" + unit, rounded(m.pattern)},
                {"residual" + unit, rounded(m.residual())}};
    if (m.adjustment != 0.0) row["adjusted" + unit] = rounded(m.adjustment);
    if (m.source == Source::Estimated) {
      row["doubt" + unit] = rounded(run.body.measurements[m.name]->doubt);
    }
    list.push_back(std::move(row));
  }
  return list;
}

Json dart_list(const std::vector<DartMeasure>& darts) {
  Json list = Json::array();
  for (const DartMeasure& d : darts) {
    list.push_back({{"piece", d.piece},
                    {"name", d.name},
                    {"angle_deg", rounded(d.angle.degrees())},
                    {"intake_mm", rounded(d.intake)},
                    {"leg_mm", rounded(d.leg)}});
  }
  return list;
}

Json length_map(const std::vector<NamedLength>& lengths) {
  Json map = Json::object();
  for (const NamedLength& l : lengths) map[l.name] = rounded(l.mm);
  return map;
}

Json corrections_as_json(const BlockRun& run) {
  Json list = Json::array();
  for (const NumberedCorrection& numbered : run.corrections) {
    list.push_back({{"number", numbered.number},
                    {"date", numbered.date},
                    {"toile", numbered.toile},
                    {"action", numbered.correction.action},
                    {"place", numbered.correction.place},
                    {"by_mm", rounded(numbered.correction.by.mm())}});
  }
  return list;
}

Json steps_as_json(const BlockRun& run) {
  Json list = Json::array();
  for (const StepDone& step : run.steps) {
    list.push_back({{"did", step.words},
                    {"darts", dart_list(measured_darts(step.after))},
                    {"lengths", length_map(measured_edges(step.after))},
                    {"remarks", problems_as_json(step.remarks)}});
  }
  return list;
}

Json faired_as_json(const BlockRun& run) {
  Json list = Json::array();
  for (const BlendedEdge& f : run.blended) {
    list.push_back({{"edge", f.piece + "." + f.edge},
                    {"dart", f.piece + "." + f.dart},
                    {"kink_deg", rounded(f.kink.degrees())},
                    {"moved_mm", rounded(f.moved)}});
  }
  return list;
}

std::string text_of(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace

std::string report_json(const BlockRun& run) {
  Json report = {{"client", run.client.name},
                 {"session", run.session.date},
                 {"problems", problems_as_json(run.problems)},
                 {"measure_back", measure_back_list(run)},
                 {"darts", dart_list(run.checks.darts)},
                 {"lengths", length_map(run.checks.lengths)}};
  if (!run.corrections.empty()) {
    report["corrections"] = corrections_as_json(run);
    report["fitted_lengths"] = length_map(measured_edges(run.fitted.pattern));
  }
  if (!run.steps.empty()) report["steps"] = steps_as_json(run);
  report["faired"] = faired_as_json(run);
  report["files"] = run.files;
  return text_of(report);
}

std::string problems_json(const std::string& file, const Problems& problems) {
  return text_of(Json{{"client", nullptr},
                      {"session", nullptr},
                      {"file", file},
                      {"problems", problems_as_json(problems)},
                      {"measure_back", Json::array()},
                      {"darts", Json::array()},
                      {"lengths", Json::object()},
                      {"files", Json::array()}});
}

}  // namespace blockwright
