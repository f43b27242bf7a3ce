#include "report_json.hpp"

#include "blockwright/base/printable.hpp"

#include <cmath>
#include <utility>

namespace blockwright {
namespace {

using Json = nlohmann::ordered_json;

/// mm, rounded; null where there is none.
Json length_json(const std::optional<Length>& length) {
  return length ? Json(rounded(length->mm())) : Json(nullptr);
}

Json limit_json(const Limit& limit) {
  Json json = Json::object();
  const auto add_end = [&](const char* end, const std::optional<Measure>& value) {
    if (value) json[end + unit_suffix(*value)] = rounded(value->number());
  };
  add_end("least", limit.least);
  add_end("most", limit.most);
  return json;
}

Json measure_back_list(const Report& report) {
  Json list = Json::array();
  for (const MeasureBack& m : report.measure_back) {
    const std::string unit = unit_suffix(m.body);
    Json row = {{"name", info(m.name).key},
                {"source", m.source == Source::Taped ? "taped" : "estimated"},
                {"body" + unit, rounded(m.body.number())},
                {"ease" + unit, rounded(m.ease.number())},
                {"pattern" + unit, rounded(m.pattern.number())},
                {"residual" + unit, rounded(m.residual().number())}};
    if (m.adjustment.number() != 0.0) row["adjusted" + unit] = rounded(m.adjustment.number());
    if (m.source == Source::Estimated) {
      const BodyMeasurement& estimate = *report.body.measurements[m.name];
      row["doubt" + unit] = rounded(estimate.doubt.number());
      if (estimate.extrapolated) row["extrapolated"] = true;
    }
    list.push_back(std::move(row));
  }
  return list;
}

Json dart_json(const DartMeasure& d) {
  return {{"piece", d.piece},
          {"name", d.name},
          {"angle_deg", rounded(d.angle.degrees())},
          {"intake_mm", rounded(d.intake)},
          {"leg_mm", rounded(d.leg)}};
}

Json dart_change_json(const DartChange& change) {
  return {{"before", change.before ? dart_json(*change.before) : Json(nullptr)},
          {"after", change.after ? dart_json(*change.after) : Json(nullptr)}};
}

Json stage_json(const Stage& stage, Unit unit) {
  Json lengths = Json::object();
  for (const NamedLength& l : stage.lengths) lengths[l.name] = rounded(l.mm);
  const Json moved = list_of(stage.moved, [&](const Change& change) -> Json {
    return {{"did", worded(change.did, unit)},
            {"lengths", list_of(change.lengths, change_json)},
            {"darts", list_of(change.darts, dart_change_json)},
            {"remarks", problems_as_json(worded(change.remarks, unit))}};
  });
  return {{"name", stage.name},
          {"lengths", lengths},
          {"darts", list_of(stage.darts, dart_json)},
          {"moved", moved}};
}

Json correction_json(const NumberedCorrection& numbered) {
  return {{"number", numbered.number},
          {"date", numbered.date},
          {"toile", numbered.toile},
          {"action", numbered.correction.action},
          {"place", numbered.correction.place},
          {"by_mm", rounded(numbered.correction.by.mm())}};
}

Json finished_json(const FinishedGirth& girth) {
  return {{"name", info(girth.name).key},
          {"body_mm", rounded(girth.body.mm())},
          {"ease_mm", rounded(girth.ease.mm())},
          {"own_ease_mm", rounded(girth.own_ease.mm())},
          {"corrections_mm", rounded(girth.corrections.mm())},
          {"finished_mm", rounded(girth.finished.mm())}};
}

Json blended_json(const BlendedEdge& seam) {
  return {{"edge", seam.piece + "." + seam.edge},
          {"dart", seam.piece + "." + seam.dart},
          {"kink_deg", rounded(seam.kink.degrees())},
          {"moved_mm", rounded(seam.moved)}};
}

Json bands_json(const BlockBands& bands, Length allowance) {
  const auto edge = [](const LengthBand& band) -> Json {
    return {{"edge", band.piece + "." + band.edge},
            {"length_mm", rounded(band.length.mm())},
            {"off_mm", rounded(band.off.mm())},
            {"aside_mm", rounded(band.aside.mm())}};
  };
  const auto point = [](const PointBand& band) -> Json {
    return {{"point", band.piece + "." + band.point},
            {"x_mm", rounded(band.x.mm())},
            {"y_mm", rounded(band.y.mm())}};
  };
  return {{"edges", list_of(bands.lengths, edge)},
          {"points", list_of(bands.points, point)},
          {"take_first", list_of(bands.take_first, retake_json)},
          {"toile_allowance_mm", rounded(allowance.mm())}};
}

}  // namespace

Json retake_json(const Retake& retake) {
  return {{"name", info(retake.name).key},
          {"source", retake.taped ? "taped" : "estimated"},
          {"narrows", rounded(retake.narrows)}};
}

std::string unit_suffix(Measure value) { return value.is_angle() ? "_deg" : "_mm"; }

Json problems_as_json(const Problems& problems) {
  Json list = Json::array();
  for (const Problem& p : problems) {
    Json row = {{"severity", severity_name(p.severity)},
                {"code", p.code},
                {"where", p.where},
                {"message", p.message.plain()},
                {"hint", p.hint.plain()}};
    if (!p.measurements.empty()) row["measurements"] = p.measurements;
    if (!p.options.empty()) row["options"] = p.options;
    if (p.limit != Limit()) row["limit"] = limit_json(p.limit);
    list.push_back(std::move(row));
  }
  return list;
}

std::string problems_json(const Problems& problems) {
  return printable(problems_as_json(problems).dump(-1, ' ', false, Json::error_handler_t::replace));
}

double rounded(double value) {
  constexpr double steps_per_unit = 1e4;
  const double r = std::round(value * steps_per_unit) / steps_per_unit;
  return r == 0.0 ? 0.0 : r;
}

Json change_json(const LengthChange& change) {
  Json json = {{"name", change.name},
               {"before_mm", length_json(change.before)},
               {"after_mm", length_json(change.after)}};
  if (change.cut_after) {
    json["cut_before_mm"] = length_json(change.cut_before);
    json["cut_after_mm"] = length_json(change.cut_after);
  }
  if (change.predicted) json["predicted_mm"] = length_json(change.predicted);
  return json;
}

Json making_json(const Making& making) {
  return {{"cut", making.to_cut}, {"buy", making.to_buy}, {"sew", making.to_sew}};
}

std::string text_of(const Json& json) {
  return printable_lines(json.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

std::string report_json(const Report& report) {
  Json json = {{"client", report.client},
               {"session", report.session},
               {"problems", problems_as_json(report.problems)},
               {"measure_back", measure_back_list(report)}};
  if (!report.corrections.empty()) {
    json["corrections"] = list_of(report.corrections, correction_json);
  }
  json["stages"] =
      list_of(report.stages, [&](const Stage& stage) { return stage_json(stage, report.unit); });
  if (!report.finished.empty()) json["finished"] = list_of(report.finished, finished_json);
  if (!report.making.to_cut.empty()) json["making"] = making_json(report.making);
  json["blended"] = list_of(report.blended, blended_json);
  if (report.bands) json["bands"] = bands_json(*report.bands, report.toile_allowance);
  json["files"] = report.files;
  return text_of(json);
}

std::string failure_json(const std::string& file, const Problems& problems) {
  return text_of(Json{{"client", nullptr},
                      {"session", nullptr},
                      {"file", file},
                      {"problems", problems_as_json(problems)},
                      {"measure_back", Json::array()},
                      {"stages", Json::array()},
                      {"files", Json::array()}});
}

}  // namespace blockwright
