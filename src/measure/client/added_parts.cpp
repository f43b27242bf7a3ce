#include "added_parts.hpp"

#include "blockwright/base/error.hpp"
#include "client_keys.hpp"

#include <fmt/format.h>

#include <sstream>

namespace blockwright {
namespace {

using Kind = JsonPart::Kind;

// The least session that a client file can have: what is read stands beside it.
JsonPart some_session(Unit unit) {
  const std::string bust = unit == Unit::Cm ? "92" : "36";
  return session_part({.date = "2000-01-01",
                       .by = {},
                       .tape = {{.name = MeasurementName::BustGirth, .values = {bust}}}},
                      false, false);
}

std::string client_text(Unit unit, JsonPart sessions, JsonPart fittings) {
  JsonPart root{.kind = Kind::Object};
  root.members = {{"format", json_text(kClientFormat)},
                  {"name", json_text("-")},
                  {"unit", json_text(unit == Unit::Cm ? "cm" : "in")},
                  {"sessions", std::move(sessions)},
                  {"fittings", std::move(fittings)}};
  return written(root, {}, {});
}

// "by" of "new:1:190 fittings[0].corrections[0].by"
std::string last_key(const std::string& where) {
  std::string key = where.substr(where.find_last_of(" .") + 1);
  return key.substr(0, key.find('['));
}

Client read_parts(const std::string& text, std::string_view file) {
  std::istringstream in(text);
  try {
    return read_client(in, "new");
  } catch (const InputError& error) {
    Problem problem = error.problem();
    problem.where = fmt::format("{} {} to be added", file, last_key(problem.where));
    throw InputError(std::move(problem));
  }
}

JsonPart readings_part(const std::vector<std::string>& values) {
  if (values.size() == 1) return json_amount(values.front());
  JsonPart list{.kind = Kind::List};
  for (const std::string& value : values) list.members.emplace_back("", json_amount(value));
  return list;
}

}  // namespace

JsonPart list_of_one(JsonPart element, bool lines) {
  JsonPart list{.kind = Kind::List};
  list.members.emplace_back("", std::move(element));
  list.lines = lines;
  return list;
}

JsonPart correction_part(const NewCorrection& correction, bool lines) {
  JsonPart part{.kind = Kind::Object};
  part.members = {{correction.action, json_text(correction.place)},
                  {"by", json_amount(correction.by)}};
  if (correction.as) part.members.emplace_back("as", json_text(amount_word(*correction.as)));
  if (correction.side != BodySide::Both) {
    part.members.emplace_back("side", json_text(side_word(correction.side)));
  }
  if (!correction.seen.empty()) part.members.emplace_back("seen", json_text(correction.seen));
  part.lines = lines;
  return part;
}

JsonPart fitting_part(const FittingOf& fitting, JsonPart correction, bool lines) {
  JsonPart part{.kind = Kind::Object};
  part.members = {{"date", json_text(fitting.date)},
                  {"toile", JsonPart{.scalar = fmt::format("{}", fitting.toile)}}};
  if (!fitting.by.empty()) part.members.emplace_back("by", json_text(fitting.by));
  if (!fitting.note.empty()) part.members.emplace_back("note", json_text(fitting.note));
  part.members.emplace_back("corrections", list_of_one(std::move(correction), lines));
  part.lines = lines;
  return part;
}

JsonPart session_part(const NewSession& session, bool lines, bool tape_lines) {
  JsonPart tape{.kind = Kind::Object};
  for (const NewReadings& taken : session.tape) {
    tape.members.emplace_back(info(taken.name).key, readings_part(taken.values));
  }
  tape.lines = tape_lines;
  JsonPart part{.kind = Kind::Object};
  part.members = {{"date", json_text(session.date)}};
  if (!session.by.empty()) part.members.emplace_back("by", json_text(session.by));
  part.members.emplace_back("tape", std::move(tape));
  part.lines = lines;
  return part;
}

Fitting read_fitting_part(const JsonPart& fitting, Unit unit, std::string_view file) {
  const std::string text =
      client_text(unit, list_of_one(some_session(unit), false), list_of_one(fitting, false));
  return read_parts(text, file).fittings.front();
}

Session read_session_part(const JsonPart& session, Unit unit, std::string_view file) {
  const std::string text =
      client_text(unit, list_of_one(session, false), JsonPart{.kind = Kind::List});
  return read_parts(text, file).sessions.front();
}

}  // namespace blockwright
