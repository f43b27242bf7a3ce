#pragma once

#include <nlohmann/json.hpp>

namespace blockwright {

/// The schema of client files with everything that the program's tables know put in anew:
/// measurements with their limits, the words of corrections, the ways of reading an amount.
nlohmann::ordered_json with_tables(nlohmann::ordered_json client_schema);

}  // namespace blockwright
