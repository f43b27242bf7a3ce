#include "client_parts.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "client_file.hpp"
#include "measure_text.hpp"

#include <fmt/format.h>

#include <optional>

namespace blockwright {
namespace {

using Kind = JsonPart::Kind;

void add_text(JsonPart& object, const char* key, std::string_view text) {
  if (!text.empty()) object.members.emplace_back(key, json_text(text));
}

constexpr std::string_view kWithdrawn = "withdrawn";
constexpr std::string_view kTrue = "true";

// 0.1 mm, or 0.001 of an inch.
std::string amount_in_file(Length amount, Unit unit) {
  return unit == Unit::Cm ? trimmed(amount.cm(), 2) : trimmed(amount.inches(), 3);
}

JsonPart true_part() { return {.scalar = std::string(kTrue)}; }

// What leads from the member before to the value of a mark that is the last member: as it is
// written, and as withdrawing writes it.
struct Lead {
  std::size_t begin = 0;
  std::string_view written;
  std::string ours;
};

std::optional<Lead> lead_to(const JsonValue& mark, const JsonEdit& edit,
                            const JsonValue& correction) {
  const std::size_t before = correction.children.size() - 1;
  if (&edit.document().child(correction, before) != &mark) return std::nullopt;
  const std::size_t begin = edit.document().child(correction, before - 1).end;
  std::string ours = edit.member_text(correction, before, kWithdrawn, true_part());
  ours.resize(ours.size() - kTrue.size());
  return Lead{begin, edit.bytes(begin, mark.begin), ours};
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

JsonPart new_tape_part(const AfterNewTape& after, Unit unit) {
  JsonPart amount{.scalar = amount_in_file(after.by, unit)};
  if (after.answer == OnNewTape::Change) return amount;
  if (after.answer == OnNewTape::Settled) {
    return {.kind = Kind::Object, .members = {{std::string(kSettledKey), amount}}};
  }
  return json_text(after.answer == OnNewTape::Keep ? "keep" : "drop");
}

JsonPart fitting_part(const FittingOf& fitting) {
  JsonPart part{.kind = Kind::Object};
  part.members = {{"date", json_text(fitting.date)},
                  {"toile", JsonPart{.scalar = fmt::format("{}", fitting.toile)}}};
  add_text(part, "by", fitting.by);
  add_text(part, "note", fitting.note);
  return part;
}

JsonPart readings_part(const std::vector<std::string>& values) {
  if (values.empty()) return {.scalar = "null"};
  if (values.size() == 1) return json_amount(values.front());
  JsonPart list{.kind = Kind::List};
  for (const std::string& value : values) list.members.emplace_back("", json_amount(value));
  return list;
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

JsonPart client_part(const NewClient& client) {
  JsonPart session = session_part(client.session);
  session.lines = session.members.back().second.lines = true;
  JsonPart sessions = list_of_one(std::move(session));
  sessions.lines = true;
  JsonPart part{.kind = Kind::Object, .lines = true};
  part.members = {{"format", json_text(kClientFormat)},
                  {"name", json_text(client.name)},
                  {"unit", json_text(unit_name(client.unit))},
                  {"sessions", std::move(sessions)}};
  return part;
}

std::string marked_withdrawn(const JsonEdit& edit, const JsonValue& correction) {
  const JsonValue* mark = edit.document().member(correction, kWithdrawn);
  if (mark == nullptr) return edit.with_member(correction, kWithdrawn, true_part());
  const auto lead = lead_to(*mark, edit, correction);
  const bool like_ours = lead && lead->written == lead->ours;
  return edit.with_bytes(mark->begin, mark->end, like_ours ? " true" : kTrue);
}

std::string marked_active(const JsonEdit& edit, const JsonValue& correction) {
  const JsonValue* mark = edit.document().member(correction, kWithdrawn);
  require(mark != nullptr, "an active correction is made active");
  const auto lead = lead_to(*mark, edit, correction);
  if (lead && lead->written == lead->ours) return edit.with_bytes(lead->begin, mark->end, "");
  const bool spaced = lead && lead->written == lead->ours + " ";
  return edit.with_bytes(mark->begin - (spaced ? 1 : 0), mark->end, "false");
}

Length as_written_in_file(Length amount, Unit unit) {
  const double number = number_in<double>(amount_in_file(amount, unit)).value_or(0.0);
  return measured(number, MeasurementKind::Length, unit).length();
}

}  // namespace blockwright
