#include "added_parts.hpp"

#include <fmt/format.h>

namespace blockwright {
namespace {

using Kind = JsonPart::Kind;

void add_text(JsonPart& object, const char* key, std::string_view text) {
  if (!text.empty()) object.members.emplace_back(key, json_text(text));
}

JsonPart readings_part(const std::vector<std::string>& values) {
  if (values.size() == 1) return json_amount(values.front());
  JsonPart list{.kind = Kind::List};
  for (const std::string& value : values) list.members.emplace_back("", json_amount(value));
  return list;
}

}  // namespace

JsonPart list_of_one(JsonPart element) {
  JsonPart list{.kind = Kind::List};
  list.members.emplace_back("", std::move(element));
  return list;
}

JsonPart correction_part(const NewCorrection& correction) {
  JsonPart part{.kind = Kind::Object};
  part.members = {{correction.action, json_text(correction.place)},
                  {"by", json_amount(correction.by)}};
  if (correction.as) add_text(part, "as", amount_way(*correction.as).word);
  if (correction.side != BodySide::Both) add_text(part, "side", side_word(correction.side));
  add_text(part, "seen", correction.seen);
  return part;
}

JsonPart fitting_part(const FittingOf& fitting, JsonPart correction) {
  JsonPart part{.kind = Kind::Object};
  part.members = {{"date", json_text(fitting.date)},
                  {"toile", JsonPart{.scalar = fmt::format("{}", fitting.toile)}}};
  add_text(part, "by", fitting.by);
  add_text(part, "note", fitting.note);
  part.members.emplace_back("corrections", list_of_one(std::move(correction)));
  return part;
}

JsonPart session_part(const NewSession& session) {
  JsonPart tape{.kind = Kind::Object};
  for (const NewReadings& taken : session.tape) {
    tape.members.emplace_back(info(taken.name).key, readings_part(taken.values));
  }
  JsonPart part{.kind = Kind::Object};
  part.members = {{"date", json_text(session.date)}};
  add_text(part, "by", session.by);
  part.members.emplace_back("tape", std::move(tape));
  return part;
}

}  // namespace blockwright
