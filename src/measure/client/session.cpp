#include "blockwright/base/error.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/text/refuse.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace blockwright {
namespace {

std::string dates_of(const Client& client) {
  std::vector<std::string_view> dates;
  for (const Session& session : client.sessions) dates.emplace_back(session.date);
  return fmt::format("{}", fmt::join(dates, ", "));
}

}  // namespace

Measure Readings::median() const {
  require(!values.empty(), "median of no readings");
  if (values.size() == 1) return values.front();
  std::vector<Measure> sorted = values;
  std::ranges::sort(sorted);
  const std::size_t middle = sorted.size() / 2;
  return sorted.size() % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2.0;
}

Measure Readings::spread() const {
  require(!values.empty(), "spread of no readings");
  const auto [least, most] = std::ranges::minmax(values);
  return most - least;
}

const Session& session_of(const Client& client, std::string_view date, std::string_view file) {
  require(!client.sessions.empty(), "a client without sessions");
  if (date.empty()) return client.sessions.back();
  const auto found = std::ranges::find(client.sessions, date, &Session::date);
  if (found != client.sessions.end()) return *found;
  refuse("client.session", std::string(file),
         fmt::format("there is no session of the date {}", shown(date)),
         fmt::format("the dates are: {}", dates_of(client)));
}

}  // namespace blockwright
