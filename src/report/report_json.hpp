#pragma once

#include "blockwright/report/fitting_report.hpp"
#include "blockwright/report/report.hpp"

#include <nlohmann/json.hpp>

#include <string>

namespace blockwright {

/// "_deg" for an angle, else "_mm": the end of the key that its number has.
std::string unit_suffix(Measure value);

/// Problems as every report has them: severity, code, where, message, hint; and the measurements,
/// the options and the limit that they speak of.
nlohmann::ordered_json problems_as_json(const Problems& problems);

/// What one more reading would do.
nlohmann::ordered_json retake_json(const Retake& retake);

/// A length before and after.
nlohmann::ordered_json change_json(const LengthChange& change);

/// A JSON list of what each item becomes.
template <class Items, class ToJson>
nlohmann::ordered_json list_of(const Items& items, const ToJson& to_json) {
  auto list = nlohmann::ordered_json::array();
  for (const auto& item : items) list.push_back(to_json(item));
  return list;
}

/// The fittings toile by toile: what was seen, what was done, what to look at first on the next.
nlohmann::ordered_json story_json(const FittingReport& report);
/// Keys of the measurements to be taken again.
nlohmann::ordered_json tapes_again_json(const FittingReport& report);

/// The whole text of a report, what is not printable escaped; bytes that are not UTF-8 are
/// replaced.
std::string text_of(const nlohmann::ordered_json& json);

}  // namespace blockwright
