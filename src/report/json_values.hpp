#pragma once

#include "blockwright/report/json_text.hpp"
#include "blockwright/report/report.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>

namespace blockwright {

/// Problems as every report has them: severity, code, where, message, hint.
nlohmann::ordered_json problems_as_json(const Problems& problems);

/// mm, rounded; null where there is none.
nlohmann::ordered_json length_json(const std::optional<Length>& length);

/// A length before and after.
nlohmann::ordered_json change_json(const LengthChange& change);

/// The whole text of a report; bytes that are not UTF-8 are replaced.
std::string text_of(const nlohmann::ordered_json& json);

}  // namespace blockwright
