#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "client_file.hpp"

#include <fmt/format.h>

#include <cmath>

namespace blockwright {
namespace {

int read_toile(const JsonDocument& document, const JsonValue& fitting) {
  const std::string hint = fmt::format("count the toiles from 1 to {}: \"toile\": 1", kMostToiles);
  const JsonValue& value = required(document, fitting, "toile", hint);
  expect(document, value, JsonKind::Number, hint);
  const bool whole = value.number == std::floor(value.number);
  if (whole && value.number >= 1.0 && value.number <= kMostToiles) {
    return static_cast<int>(value.number);
  }
  refuse("client.range", document.where(value),
         fmt::format("toile is {}, not a whole number from 1 to {}", document.as_written(value),
                     kMostToiles),
         hint);
}

std::vector<Correction> read_corrections(const JsonDocument& document, const JsonValue& fitting,
                                         Unit unit) {
  std::vector<Correction> corrections;
  const JsonValue* list = document.member(fitting, "corrections");
  if (list == nullptr) return corrections;
  expect(document, *list, JsonKind::List,
         "corrections are a list: [ { \"lower\": \"front_neck\", \"by\": 1.0 } ]");
  for (std::size_t i = 0; i < list->children.size(); ++i) {
    corrections.push_back(read_correction(document, document.child(*list, i), unit));
  }
  return corrections;
}

Fitting read_fitting(const JsonDocument& document, const JsonValue& value, Unit unit) {
  expect(document, value, JsonKind::Object,
         "a fitting is an object: { \"date\": ..., \"toile\": 1, \"corrections\": [ ... ] }");
  check_keys(document, value, kFittingKeys);
  return {.date = read_date(document, value),
          .toile = read_toile(document, value),
          .by = read_optional_text(document, value, "by", kMostTextLength),
          .note = read_optional_text(document, value, "note", kMostNoteLength),
          .corrections = read_corrections(document, value, unit)};
}

constexpr std::string_view kOrderHint =
    "fittings stand in the order in which they were made, the newest last: correct the number or "
    "the date, or change their places";

// Requires: `value` has been read as `fitting`, after `before` of the line named.
void check_order(const JsonDocument& document, const JsonValue& value, const Fitting& fitting,
                 const Fitting& before, const std::string& line) {
  if (fitting.toile < before.toile) {
    refuse("client.order", document.where(*document.member(value, "toile")),
           fmt::format("toile {} comes after toile {}, which is in {}", fitting.toile, before.toile,
                       line),
           std::string(kOrderHint));
  }
  if (fitting.date < before.date) {
    refuse("client.order", document.where(*document.member(value, "date")),
           fmt::format("the fitting of {} comes after that of {}, which is in {}", fitting.date,
                       before.date, line),
           std::string(kOrderHint));
  }
  if (fitting.date == before.date && fitting.toile == before.toile) {
    refuse("client.duplicate", document.where(*document.member(value, "date")),
           fmt::format("two fittings have the date {} and toile {}; the first is in {}",
                       fitting.date, fitting.toile, line),
           "write the corrections of both into one, or correct a date");
  }
}

}  // namespace

std::string read_optional_text(const JsonDocument& document, const JsonValue& object,
                               std::string_view key, std::size_t most) {
  const JsonValue* value = document.member(object, key);
  return value == nullptr ? std::string() : read_plain_text(document, *value, most);
}

std::vector<Fitting> read_fittings(const JsonDocument& document, const JsonValue& list, Unit unit) {
  expect(document, list, JsonKind::List, "fittings are a list: [ { ... } ]; or leave the key out");
  std::vector<Fitting> fittings;
  for (std::size_t i = 0; i < list.children.size(); ++i) {
    const JsonValue& value = document.child(list, i);
    fittings.push_back(read_fitting(document, value, unit));
    if (i == 0) continue;
    check_order(document, value, fittings[i], fittings[i - 1],
                document.line_of(document.child(list, i - 1)));
  }
  return fittings;
}

}  // namespace blockwright
