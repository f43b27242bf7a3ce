#include "json_values.hpp"

#include <cmath>

namespace blockwright {

using Json = nlohmann::ordered_json;

namespace {

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

}  // namespace

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
  return problems_as_json(problems).dump(-1, ' ', false, Json::error_handler_t::replace);
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

std::string text_of(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace blockwright
