#include "read_wearing_ease.hpp"

#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {
namespace {

struct EaseKey {
  std::string_view name;
  double WearingEase::*mm;
  bool required = false;
};
constexpr auto kEaseKeys = std::to_array<EaseKey>({
    {"bust", &WearingEase::bust, true},
    {"waist", &WearingEase::waist, true},
    {"raise_underarm", &WearingEase::raise_underarm},
    {"shoulder_in", &WearingEase::shoulder_in},
});

template <class Rows>
std::vector<std::string_view> names_in(const Rows& rows) {
  std::vector<std::string_view> names(rows.size());
  std::ranges::transform(rows, names.begin(), [](const auto& row) { return row.name; });
  return names;
}

struct GivenEase {
  const EaseKey& key;
  double mm;
};

void require_wearable(const JsonDocument& document, const JsonValue& value, const GivenEase& given,
                      Unit unit) {
  const auto& [key, mm] = given;
  const double least = kLeastWearingEase.*key.mm, most = kMostWearingEase.*key.mm;
  if (mm >= least && mm <= most) return;
  const auto number = [&](double length) { return number_text(Length::mm(length), unit); };
  const std::string in = " " + std::string(unit_name(unit));
  refuse("style.ease", document.where(value), std::string(key.name) + " is " + number(mm) + in,
         "from " + number(least) + " to " + number(most) + in + " can be worn");
}

}  // namespace

WearingEase read_wearing_ease(const JsonDocument& document, const JsonValue& value,
                              const FileUnit& unit) {
  if (value.kind == JsonKind::Text) {
    return kWearingEases.at(read_word(document, value, names_in(kWearingEases)));
  }
  if (value.kind != JsonKind::Object) {
    refuse(
        document.code("type"), document.where(value), "an ease is a word, or lengths",
        R"(write "sleeved", "sleeveless", "close" or "strapless", or { "bust": 4, "waist": 2 })");
  }
  check_keys(document, value, names_in(kEaseKeys));
  WearingEase ease;
  for (const EaseKey& key : kEaseKeys) {
    if (key.required) {
      required(document, value, key.name, "say how much larger than the body it is there");
    }
    const JsonValue* given = document.member(value, key.name);
    if (given == nullptr) continue;
    double written = 0.0;
    read_value(document, *given, written);
    ease.*key.mm = written * unit.mm;
    require_wearable(document, *given, {key, ease.*key.mm}, unit.unit);
  }
  return ease;
}

}  // namespace blockwright
