#include "blockwright/measure/typed_correction.hpp"
#include "blockwright/text/json_values.hpp"
#include "blockwright/text/refuse.hpp"
#include "blockwright/text/utf8.hpp"
#include "client_file.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

std::vector<std::string_view> places_of(std::string_view action) {
  std::vector<std::string_view> places;
  for (const CorrectionWords& words : correction_words()) {
    if (words.action == action) places.push_back(words.place);
  }
  return places;
}

std::vector<std::string_view> actions_at(std::string_view place) {
  std::vector<std::string_view> actions;
  for (const CorrectionWords& words : correction_words()) {
    if (words.place == place) actions.push_back(words.action);
  }
  return actions;
}

bool is_action(const JsonValue& member) {
  return std::ranges::find(correction_actions(), member.key) != correction_actions().end();
}

void check_correction_keys(const JsonDocument& document, const JsonValue& value) {
  std::vector<std::string_view> known(correction_actions().begin(), correction_actions().end());
  known.insert(known.end(), kCorrectionKeys.begin(), kCorrectionKeys.end());
  check_keys(document, value, known);
}

[[noreturn]] void refuse_second_action(const JsonDocument& document, const JsonValue& first,
                                       const JsonValue& second) {
  refuse("client.correction", document.where_key(second),
         fmt::format("one correction has both \"{}\" and \"{}\"", first.key, second.key),
         "a correction does one thing: make two of them, each with its own \"by\"");
}

// The member that says what is done; its value says where.
const JsonValue& action_of(const JsonDocument& document, const JsonValue& correction) {
  const JsonValue* action = nullptr;
  for (std::size_t i = 0; i < correction.children.size(); ++i) {
    const JsonValue& member = document.child(correction, i);
    if (!is_action(member)) continue;
    if (action != nullptr) refuse_second_action(document, *action, member);
    action = &member;
  }
  if (action == nullptr) {
    refuse("client.correction", document.where(correction),
           "the correction does not say what is to be done",
           fmt::format("write \"lower\": \"front_neck\", for example; what can be done: {}",
                       fmt::join(correction_actions(), ", ")));
  }
  return *action;
}

// The place that was likely meant: one that goes with the action, sooner than another.
std::string place_hint(const JsonValue& action) {
  const std::vector<std::string_view> here = places_of(action.key);
  const std::string_view best = nearest(action.text, here);
  if (!best.empty()) return fmt::format("did you mean \"{}\"?", best);
  const std::string_view other = nearest(action.text, correction_places());
  if (!other.empty()) {
    return fmt::format("did you mean \"{}\"? It goes with: {}", other,
                       fmt::join(actions_at(other), ", "));
  }
  return fmt::format("\"{}\" goes with: {}", action.key, fmt::join(here, ", "));
}

[[noreturn]] void refuse_place(const JsonDocument& document, const JsonValue& action) {
  const std::vector<std::string_view> actions = actions_at(action.text);
  if (actions.empty()) {
    refuse("client.correction", document.where(action),
           fmt::format("{} is not a place to correct{}", document.as_written(action),
                       odd_letter_note(action.text)),
           place_hint(action));
  }
  refuse("client.correction", document.where(action),
         fmt::format("\"{}\" does not go with \"{}\"", action.key, action.text),
         fmt::format("for \"{}\" write one of: {}; \"{}\" goes with: {}", action.text,
                     fmt::join(actions, ", "), action.key, fmt::join(places_of(action.key), ", ")));
}

const CorrectionWords& read_words(const JsonDocument& document, const JsonValue& correction) {
  const JsonValue& action = action_of(document, correction);
  expect(document, action, JsonKind::Text,
         fmt::format("write the place as a text: \"{}\": \"{}\"", action.key,
                     places_of(action.key).front()));
  const CorrectionWords* words = find_correction_words(action.key, action.text);
  if (words == nullptr) refuse_place(document, action);
  return *words;
}

BodySide read_side(const JsonDocument& document, const JsonValue& correction,
                   const CorrectionWords& words) {
  const std::string hint = words.one_sided
                               ? "write \"side\": \"left\" or \"side\": \"right\", as she has it"
                               : "write \"left\" or \"right\", as she has it; leave the key out "
                                 "for both sides";
  const JsonValue* value = document.member(correction, "side");
  if (value == nullptr && !words.one_sided) return BodySide::Both;
  const JsonValue& given = required(document, correction, "side", hint);
  expect(document, given, JsonKind::Text, hint);
  const auto side = side_named(given.text);
  if (side && (*side != BodySide::Both || !words.one_sided)) return *side;
  refuse("client.correction", document.where(given),
         side ? fmt::format("the side is {}, where \"{}\" means one side alone",
                            document.as_written(given), words.place)
              : fmt::format("the side {} is neither \"left\", \"right\" nor \"both\"{}",
                            document.as_written(given), odd_letter_note(given.text)),
         hint);
}

bool read_withdrawn(const JsonDocument& document, const JsonValue& correction) {
  const JsonValue* value = document.member(correction, "withdrawn");
  if (value == nullptr) return false;
  expect(document, *value, JsonKind::Boolean,
         "write \"withdrawn\": true, without quotes; leave the key out for a correction that "
         "counts");
  return value->flag;
}

constexpr const char* kNewTapeHint =
    "write \"keep\", \"drop\", or the amount that remains of it now that a newer tape session has "
    "some of it, 1.5, or, as the program writes it, { \"settled\": 1.5 }; leave the key out to be "
    "asked";

bool is_amount(const JsonValue& value) {
  return value.kind == JsonKind::Number ||
         (value.kind == JsonKind::Text && amount_typed(value.text).has_value());
}

/// { "settled": 2.5 }, as an answer to the program is written.
AfterNewTape read_settled(const JsonDocument& document, const JsonValue& value, Unit unit) {
  constexpr const char* hint = "as the program writes it: { \"settled\": 2.5 }";
  check_keys(document, value, std::array{kSettledKey});
  const JsonValue& left = required(document, value, kSettledKey, hint);
  return {OnNewTape::Settled, read_remaining(document, left, unit, hint)};
}

AfterNewTape read_new_tape(const JsonDocument& document, const JsonValue& correction, Unit unit) {
  const JsonValue* value = document.member(correction, "new_tape");
  if (value == nullptr) return {};
  if (value->kind == JsonKind::Object) return read_settled(document, *value, unit);
  if (is_amount(*value)) {
    return {OnNewTape::Change, read_remaining(document, *value, unit, kNewTapeHint)};
  }
  if (value->text == "keep") return {OnNewTape::Keep, {}};
  if (value->text == "drop") return {OnNewTape::Drop, {}};
  refuse("client.correction", document.where(*value),
         fmt::format("{} is neither \"keep\", \"drop\" nor an amount{}",
                     document.as_written(*value), odd_letter_note(value->text)),
         kNewTapeHint);
}

// An amount that the maker writes is a part of what was asked for; what a sum leaves may have come
// from another correction.
void require_a_part(const JsonDocument& document, const JsonValue& correction,
                    const Correction& read) {
  const auto& [answer, by] = read.new_tape;
  if (answer != OnNewTape::Change || by <= read.by) return;
  const JsonValue& value = *document.member(correction, "new_tape");
  refuse("client.range", document.where(value),
         fmt::format("new_tape is {}, and by is {}: no more remains of a correction than it was",
                     document.as_written(value), read.given),
         "for more write a correction of the fitting that showed it");
}

}  // namespace

Correction read_correction(const JsonDocument& document, const JsonValue& value, Unit unit) {
  expect(document, value, JsonKind::Object,
         "a correction is an object: { \"lower\": \"front_neck\", \"by\": 1.0 }");
  check_correction_keys(document, value);
  const CorrectionWords& words = read_words(document, value);
  Correction correction;
  correction.action = words.action;
  correction.place = words.place;
  const GivenAmount amount = read_amount(document, value, words, unit);
  correction.by = amount.by;
  correction.given = amount.given;
  correction.side = read_side(document, value, words);
  correction.as = read_way(document, value, words, correction.side);
  correction.seen = read_optional_text(document, value, "seen", kMostNoteLength);
  correction.withdrawn = read_withdrawn(document, value);
  correction.new_tape = read_new_tape(document, value, unit);
  require_a_part(document, value, correction);
  return correction;
}

}  // namespace blockwright
