#include "problems_as_json.hpp"

#include <cmath>

namespace blockwright {

nlohmann::ordered_json problems_as_json(const Problems& problems) {
  auto list = nlohmann::ordered_json::array();
  for (const Problem& p : problems) {
    list.push_back({{"severity", severity_name(p.severity)},
                    {"code", p.code},
                    {"where", p.where},
                    {"message", p.message},
                    {"hint", p.hint}});
  }
  return list;
}

double rounded(double value) {
  constexpr double steps_per_unit = 1e4;
  const double r = std::round(value * steps_per_unit) / steps_per_unit;
  return r == 0.0 ? 0.0 : r;
}

}  // namespace blockwright
