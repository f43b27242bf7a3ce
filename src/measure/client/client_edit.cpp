#include "blockwright/measure/client_edit.hpp"

#include "blockwright/base/error.hpp"
#include "blockwright/measure/tape_session.hpp"
#include "blockwright/text/json_edit.hpp"
#include "blockwright/text/refuse.hpp"
#include "client_file.hpp"
#include "client_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <tuple>

namespace blockwright {
namespace {

// A session that is not finished yet may be changed, too.
Client client_in(const ClientText& source) {
  std::istringstream in{std::string(source.text)};
  return read_client(in, source.file, Unfinished::Kept);
}

// A client file whose text is to be changed.
struct OpenFile {
  explicit OpenFile(const ClientText& source)
      : file(source.file),
        client(client_in(source)),
        edit(source.text, client_file(), source.file) {}

  [[nodiscard]] const JsonDocument& document() const { return edit.document(); }
  [[nodiscard]] const JsonValue* member(const JsonValue& object, std::string_view key) const {
    return document().member(object, key);
  }
  [[nodiscard]] const JsonValue& fitting(std::size_t index) const {
    return document().child(*member(document().root(), "fittings"), index);
  }

  std::string_view file;
  Client client;
  JsonEdit edit;
};

// The new text as it reads. Whatever is wrong with it was added, and has no place in the file yet:
// its key is named, "by" of "client.json:9:190 fittings[0].corrections[0].by".
Client read_again(const ClientText& source) {
  try {
    return client_in(source);
  } catch (const InputError& error) {
    Problem problem = error.problem();
    if (problem.where.find(' ', source.file.size()) != std::string::npos) {
      const std::string key = problem.where.substr(problem.where.find_last_of(" .") + 1);
      problem.where = fmt::format("{} {} to be added", source.file, key.substr(0, key.find('[')));
    }
    throw InputError(std::move(problem));
  }
}

// The proof that nothing was lost and nothing else was added: with the change taken back, the new
// text reads as the old one.
std::string proved(std::string text, const OpenFile& open, const auto& take_back) {
  Client client = read_again({text, open.file});
  take_back(client);
  require(client == open.client, "a changed client file does not read as it should");
  return text;
}

std::string fitting_name(const auto& fitting) {
  return fmt::format("the fitting of {}, toile {}", shown(fitting.date), fitting.toile);
}

// Whether each member of a correction has a line of its own, as in the file's first correction.
bool corrections_have_lines(const OpenFile& open) {
  for (std::size_t i = 0; i < open.client.fittings.size(); ++i) {
    const JsonValue* list = open.member(open.fitting(i), "corrections");
    if (list == nullptr || list->children.empty()) continue;
    return open.edit.has_lines(open.document().child(*list, 0));
  }
  return false;
}

// The same of a fitting; where there is none yet, as the file's own object has it.
bool fittings_have_lines(const OpenFile& open) {
  if (open.client.fittings.empty()) return open.edit.style().lines;
  return open.edit.has_lines(open.fitting(0));
}

// The text with one more element in the list of that key, which is made where there is none.
std::string with_element(const OpenFile& open, const JsonValue& object, std::string_view key,
                         std::size_t place, const JsonPart& part) {
  const JsonValue* list = open.member(object, key);
  if (list != nullptr) return open.edit.with_element(*list, place, part);
  JsonPart new_list = list_of_one(part);
  new_list.lines = open.edit.has_lines(object);
  return open.edit.with_member(object, key, new_list);
}

[[noreturn]] void refuse_order(const OpenFile& open, std::size_t place, const FittingOf& sought) {
  const std::vector<Fitting>& all = open.client.fittings;
  const bool too_late = place < all.size() && all[place].date < sought.date;
  refuse("client.order", std::string(open.file),
         fmt::format("{} would contradict {}: a later toile has no earlier date",
                     fitting_name(sought), fitting_name(all[too_late ? place : place - 1])),
         "correct the date or the number of the toile");
}

// A new fitting is placed behind those of earlier toiles and dates.
std::string with_new_fitting(const OpenFile& open, const JsonPart& part, const FittingOf& sought) {
  const std::vector<Fitting>& all = open.client.fittings;
  const auto later = std::ranges::find_if(all, [&](const Fitting& other) {
    return std::tie(other.toile, other.date) > std::tie(sought.toile, sought.date);
  });
  const auto place = static_cast<std::size_t>(later - all.begin());
  std::string text = with_element(open, open.document().root(), "fittings", place, part);
  try {
    return proved(std::move(text), open, [&](Client& client) {
      client.fittings.erase(client.fittings.begin() + static_cast<std::ptrdiff_t>(place));
    });
  } catch (const InputError& error) {
    if (error.problem().code == "client.order") refuse_order(open, place, sought);
    throw;
  }
}

std::string with_next_correction(const OpenFile& open, std::size_t index, const JsonPart& part) {
  const std::size_t count = open.client.fittings[index].corrections.size();
  return proved(with_element(open, open.fitting(index), "corrections", count, part), open,
                [&](Client& client) { client.fittings[index].corrections.pop_back(); });
}

// In the text; the client has them in the order of their dates.
const JsonValue& session_in_text(const OpenFile& open, const std::string& date) {
  const JsonValue& list = *open.member(open.document().root(), "sessions");
  for (std::size_t i = 0; i < list.children.size(); ++i) {
    const JsonValue& session = open.document().child(list, i);
    if (open.member(session, "date")->text == date) return session;
  }
  require(false, "a session that was read is not in the text");
  return list;
}

// In the place of what the tape has, a null or readings, or behind it all.
std::string with_taken(const OpenFile& open, const JsonValue& session, const NewReadings& taken) {
  const std::string_view key = info(taken.name).key;
  const JsonValue& tape = *open.member(session, "tape");
  const JsonPart part = readings_part(taken.values);
  const JsonValue* old = open.member(tape, key);
  if (old == nullptr) return open.edit.with_member(tape, key, part);
  return open.edit.with_bytes(old->begin, old->end, written(part, open.edit.style(), ""));
}

std::optional<std::size_t> index_of(const Client& client, const FittingOf& sought) {
  const auto found = std::ranges::find_if(client.fittings, [&](const Fitting& fitting) {
    return fitting.date == sought.date && fitting.toile == sought.toile;
  });
  if (found == client.fittings.end()) return std::nullopt;
  return static_cast<std::size_t>(found - client.fittings.begin());
}

// A text about a fitting that may be given with one of its corrections.
struct FittingText {
  std::string_view key;
  std::string Fitting::*in_file;
  std::string FittingOf::*given;
};
constexpr FittingText kFittingTexts[] = {{"by", &Fitting::by, &FittingOf::by},
                                         {"note", &Fitting::note, &FittingOf::note}};

std::string with_fitting_text(const ClientText& source, const FittingOf& sought,
                              const FittingText& about) {
  const OpenFile open(source);
  const std::string& given = sought.*about.given;
  const auto index = index_of(open.client, sought);
  if (given.empty() || !index) return std::string(source.text);
  const std::string& known = open.client.fittings[*index].*about.in_file;
  if (known == given) return std::string(source.text);
  if (open.member(open.fitting(*index), about.key) != nullptr) {
    refuse("client.duplicate", std::string(open.file),
           fmt::format("{} says \"{}\": {} already", fitting_name(sought), about.key,
                       shown(json_quoted(known))),
           fmt::format("leave \"{}\" out, or change it in the file", about.key));
  }
  return proved(open.edit.with_member(open.fitting(*index), about.key, json_text(given)), open,
                [&](Client& client) { client.fittings[*index].*about.in_file = known; });
}

std::string with_fitting_texts(const ClientText& client, const FittingOf& fitting) {
  std::string text(client.text);
  for (const FittingText& about : kFittingTexts) {
    text = with_fitting_text({text, client.file}, fitting, about);
  }
  return text;
}

struct CorrectionPlace {
  std::size_t fitting = 0;
  std::size_t correction = 0;
};

CorrectionPlace place_of_number(const OpenFile& open, std::size_t number) {
  std::size_t before = 0;
  for (std::size_t i = 0; i < open.client.fittings.size(); ++i) {
    const std::size_t count = open.client.fittings[i].corrections.size();
    if (number > before && number <= before + count) return {i, number - before - 1};
    before += count;
  }
  refuse("client.correction", std::string(open.file),
         fmt::format("there is no correction {}; the file holds {}", number, before),
         "corrections are counted from 1, over all fittings in the order of the file");
}

const JsonValue& json_at(const OpenFile& open, const CorrectionPlace& place) {
  const JsonValue& list = *open.member(open.fitting(place.fitting), "corrections");
  return open.document().child(list, place.correction);
}

auto& correction_at(auto& client, const CorrectionPlace& place) {
  return client.fittings[place.fitting].corrections[place.correction];
}

// The text with another value of a member of the number-th correction.
template <class Value>
std::string with_changed(const ClientText& source, std::size_t number, Value Correction::*member,
                         Value value, const auto& changed_text) {
  const OpenFile open(source);
  const CorrectionPlace place = place_of_number(open, number);
  const Value old = correction_at(open.client, place).*member;
  if (old == value) return std::string(source.text);
  return proved(changed_text(open.edit, json_at(open, place)), open, [&](Client& changed) {
    require(correction_at(changed, place).*member == value, "a change reads as it was given");
    correction_at(changed, place).*member = old;
  });
}

}  // namespace

std::string with_correction(const ClientText& client, const FittingOf& fitting,
                            const NewCorrection& correction) {
  const std::string text = with_fitting_texts(client, fitting);
  const OpenFile open({text, client.file});
  JsonPart part = correction_part(correction);
  part.lines = corrections_have_lines(open);
  if (const auto index = index_of(open.client, fitting)) {
    return with_next_correction(open, *index, part);
  }
  JsonPart whole = fitting_part(fitting);
  whole.members.emplace_back("corrections", list_of_one(std::move(part)));
  whole.lines = whole.members.back().second.lines = fittings_have_lines(open);
  return with_new_fitting(open, whole, fitting);
}

std::string with_fitting(const ClientText& client, const FittingOf& fitting) {
  const OpenFile open(client);
  if (index_of(open.client, fitting)) return with_fitting_texts(client, fitting);
  JsonPart part = fitting_part(fitting);
  part.lines = fittings_have_lines(open);
  return with_new_fitting(open, part, fitting);
}

std::optional<Problem> fault_of_seen(std::string_view seen) {
  constexpr const char* key = "what you typed";
  try {
    const JsonPart part{.kind = JsonPart::Kind::Object, .members = {{key, json_text(seen)}}};
    const JsonEdit text(written(part, JsonStyle{}, ""), client_file(), key);
    (void)read_optional_text(text.document(), text.document().root(), key, kMostNoteLength);
  } catch (const InputError& error) {
    return error.problem();
  }
  return std::nullopt;
}

std::string with_withdrawn(const ClientText& client, std::size_t number) {
  return with_changed(client, number, &Correction::withdrawn, true, marked_withdrawn);
}

std::string with_active(const ClientText& client, std::size_t number) {
  return with_changed(client, number, &Correction::withdrawn, false, marked_active);
}

std::string with_new_tape(const ClientText& client, std::size_t number, AfterNewTape after) {
  require(after.answer != OnNewTape::Ask, "an answer on the new tape");
  const JsonPart part = new_tape_part(after, client_in(client).unit);
  return with_changed(client, number, &Correction::new_tape, after,
                      [&](const JsonEdit& edit, const JsonValue& correction) {
                        const JsonValue* old = edit.document().member(correction, "new_tape");
                        return old == nullptr ? edit.with_member(correction, "new_tape", part)
                                              : edit.with_value(*old, part);
                      });
}

std::string with_session(const ClientText& client, const NewSession& session) {
  const OpenFile open(client);
  if (std::ranges::find(open.client.sessions, session.date, &Session::date) !=
      open.client.sessions.end()) {
    refuse("client.duplicate", std::string(open.file),
           fmt::format("there is a session of {} already", session.date),
           "give another date, or write readings of one day into one session as lists");
  }
  const JsonValue& list = *open.member(open.document().root(), "sessions");
  const JsonValue& first = open.document().child(list, 0);
  JsonPart part = session_part(session);
  part.lines = open.edit.has_lines(first);
  part.members.back().second.lines = open.edit.has_lines(*open.member(first, "tape"));
  return proved(open.edit.with_element(list, list.children.size(), part), open,
                [&](Client& changed) {
                  std::erase_if(changed.sessions,
                                [&](const Session& one) { return one.date == session.date; });
                });
}

std::string with_readings(const ClientText& client, const std::string& date,
                          const std::vector<NewReadings>& more) {
  const Client before = client_in(client);
  for (const NewReadings& taken : more) {
    if (!session_of(before, date, client.file).tape[taken.name]) continue;
    refuse("client.duplicate", std::string(client.file),
           fmt::format("the session of {} has {} already", date, info(taken.name).key),
           "change the value in the file, or take a session of another date");
  }
  return with_retaken(client, date, more);
}

std::string with_retaken(const ClientText& client, const std::string& date,
                         const std::vector<NewReadings>& taken) {
  std::string text(client.text);
  for (const NewReadings& one : taken) {
    const OpenFile open({text, client.file});
    const auto old = session_of(open.client, date, open.file).tape[one.name];
    text = proved(with_taken(open, session_in_text(open, date), one), open, [&](Client& changed) {
      std::ranges::find(changed.sessions, date, &Session::date)->tape[one.name] = old;
    });
  }
  return text;
}

std::string new_client_text(const NewClient& client, std::string_view file) {
  std::string text = written(client_part(client), JsonStyle{}, "") + "\n";
  (void)read_again({text, file});
  return text;
}

std::string blank_client_text(const BlankClient& blank, std::string_view file) {
  NewClient client{blank.name, blank.unit, {.date = blank.date, .by = "", .tape = {}}};
  for (const MeasurementName name : tape_order()) client.session.tape.push_back({name, {}});
  return new_client_text(client, file);
}

}  // namespace blockwright
