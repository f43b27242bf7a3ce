#include "blockwright/measure/client.hpp"

#include "blockwright/text/json_document.hpp"
#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "client_file.hpp"
#include "measure_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace blockwright {
namespace {

std::string dates_of(const Client& client) {
  std::vector<std::string_view> dates;
  for (const Session& session : client.sessions) dates.emplace_back(session.date);
  return fmt::format("{}", fmt::join(dates, ", "));
}

// The bust girth of a tape that is being read.
std::optional<Measure> bust_in(const PerMeasurement<Readings>& tape) {
  const auto& bust = tape[MeasurementName::BustGirth];
  return bust ? std::optional(bust->median()) : std::nullopt;
}
// An ease is no girth.
std::optional<Measure> bust_in(const PerMeasurement<Measure>&) { return std::nullopt; }

// Reads the values of one document; each function reads one kind of member.
class ClientReader {
 public:
  ClientReader(const JsonDocument& document, Unfinished unfinished)
      : document_(document), unfinished_(unfinished) {}

  Client client() {
    const JsonValue& root = document_.root();
    check_format(document_, kClientKeys);
    check_keys(document_, root, kClientKeys);
    Client result;
    result.name = read_name(
        document_, required(document_, root, "name", "write the person's name: \"name\": \"...\""));
    result.unit = unit_ = unit(root);
    result.sessions = sessions(root);
    result.ease = ease(root);
    const JsonValue* fittings = document_.member(root, "fittings");
    if (fittings != nullptr) result.fittings = read_fittings(document_, *fittings, unit_);
    check_schema(root);
    return result;
  }

 private:
  Unit unit(const JsonValue& root) const {
    const std::string hint = "write \"unit\": \"cm\" or \"unit\": \"in\"";
    const JsonValue& value = required(document_, root, "unit", hint);
    expect(document_, value, JsonKind::Text, hint);
    if (value.text == "cm") return Unit::Cm;
    if (value.text == "in") return Unit::Inch;
    refuse("client.unit", document_.where(value),
           fmt::format("the unit {} is neither \"cm\" nor \"in\"{}", document_.as_written(value),
                       odd_letter_note(value.text)),
           hint);
  }

  std::vector<Session> sessions(const JsonValue& root) const {
    const JsonValue& list =
        required(document_, root, "sessions", "write the tape sessions: \"sessions\": [ { ... } ]");
    expect(document_, list, JsonKind::List, "sessions are a list: [ { ... } ]");
    if (list.children.empty()) {
      refuse("client.missing", document_.where(list), "there is no session",
             "write at least one, with a date and a tape holding the bust_girth");
    }
    std::vector<Session> result;
    for (std::size_t i = 0; i < list.children.size(); ++i) {
      const JsonValue& value = document_.child(list, i);
      result.push_back(session(value));
      check_new_date(list, i);
    }
    if (unfinished_ == Unfinished::LeftOut) {
      std::erase_if(result,
                    [](const Session& one) { return !one.tape[MeasurementName::BustGirth]; });
      if (result.empty()) refuse_unfinished(bust_of(document_.child(list, 0)));
    }
    std::ranges::sort(result, {}, &Session::date);
    return result;
  }

  Session session(const JsonValue& value) const {
    expect(document_, value, JsonKind::Object,
           "a session is an object: { \"date\": ..., \"tape\": { ... } }");
    check_keys(document_, value, kSessionKeys);
    Session result;
    result.date = read_date(document_, value);
    result.by = read_optional_text(document_, value, "by", kMostTextLength);
    result.tape = tape(value);
    const JsonValue* sure = document_.member(value, "sure");
    if (sure != nullptr) result.sure = read_sure(document_, *sure, result.tape);
    return result;
  }

  // Requires: the sessions up to `last` have been read.
  void check_new_date(const JsonValue& list, std::size_t last) const {
    const JsonValue& date = *document_.member(document_.child(list, last), "date");
    for (std::size_t i = 0; i < last; ++i) {
      const JsonValue& earlier = *document_.member(document_.child(list, i), "date");
      if (earlier.text != date.text) continue;
      refuse("client.duplicate", document_.where(date),
             fmt::format("two sessions have the date {}; the first is in {}", date.text,
                         document_.line_of(earlier)),
             "correct one date, or write readings of one day into one session as lists");
    }
  }

  // Of the lengths of a tape more than half are no body's in the file's unit and one's in the
  // other.
  [[nodiscard]] bool is_in_other_unit(const JsonValue& tape) const {
    constexpr int fewest = 3;
    const Unit other = unit_ == Unit::Cm ? Unit::Inch : Unit::Cm;
    int lengths = 0, fit = 0;
    for (const MeasurementInfo& entry : kMeasurements) {
      const JsonValue* value = document_.member(tape, entry.key);
      if (value == nullptr || entry.kind == MeasurementKind::Angle) continue;
      if (value->kind != JsonKind::Number) continue;
      ++lengths;
      const bool here = entry.allows(measured(value->number, entry.kind, unit_));
      if (!here && entry.allows(measured(value->number, entry.kind, other))) ++fit;
    }
    return fit >= fewest && 2 * fit > lengths;
  }

  // What an object holds of each measurement, read by one of the functions of client_file.hpp.
  template <class T>
  PerMeasurement<T> per_measurement(const JsonValue& object, const std::string& hint,
                                    std::optional<T> (*read)(const FileMeasurement&,
                                                             const JsonValue&)) const {
    expect(document_, object, JsonKind::Object, hint);
    check_keys(document_, object, kMeasurementKeys);
    PerMeasurement<T> result;
    const bool other_unit = is_in_other_unit(object);
    for (const MeasurementInfo& entry : kMeasurements) {
      const JsonValue* given = document_.member(object, entry.key);
      if (given != nullptr) {
        result[entry.name] = read({document_, entry, unit_, bust_in(result), other_unit}, *given);
      }
    }
    return result;
  }

  PerMeasurement<Readings> tape(const JsonValue& session) const {
    const std::string hint = "write at least \"tape\": { \"bust_girth\": ... }";
    const JsonValue& value = required(document_, session, "tape", hint);
    auto result = per_measurement(value, hint, read_readings);
    required(document_, value, "bust_girth",
             fmt::format("it is the one measurement every session needs. {}",
                         info(MeasurementName::BustGirth).how));
    return result;
  }

  // Requires: the session was read.
  const JsonValue& bust_of(const JsonValue& session) const {
    return *document_.member(*document_.member(session, "tape"), "bust_girth");
  }

  [[noreturn]] void refuse_unfinished(const JsonValue& bust) const {
    refuse(
        "client.missing", document_.where(bust), "bust_girth is null: it was not taken yet",
        "it is the one measurement every session needs: write it in place of null, or go on with "
        "`blockwright tape FILE`");
  }

  PerMeasurement<Measure> ease(const JsonValue& root) const {
    const JsonValue* value = document_.member(root, "ease");
    if (value == nullptr) return {};
    return per_measurement(*value, "write \"ease\": { \"bust_girth\": 5.0 }", read_ease);
  }

  void check_schema(const JsonValue& root) const {
    const JsonValue* value = document_.member(root, "$schema");
    if (value == nullptr) return;
    expect(document_, *value, JsonKind::Text,
           "write the schema's place as a text, or leave it out");
  }

  const JsonDocument& document_;
  Unfinished unfinished_;
  Unit unit_ = Unit::Cm;
};

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

Client read_client(std::istream& in, std::string_view file, Unfinished unfinished) {
  const JsonDocument document = JsonDocument::read(in, file, client_file());
  return ClientReader(document, unfinished).client();
}

}  // namespace blockwright
