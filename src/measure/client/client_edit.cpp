#include "blockwright/measure/client_edit.hpp"

#include "added_parts.hpp"
#include "blockwright/base/error.hpp"
#include "blockwright/text/json_edit.hpp"
#include "blockwright/text/refuse.hpp"
#include "client_file.hpp"
#include "withdrawn_mark.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <tuple>

namespace blockwright {
namespace {

Client client_in(std::string_view text, std::string_view file) {
  std::istringstream in{std::string(text)};
  return read_client(in, file);
}

// The proof that nothing was lost and nothing else was added.
std::string proved(std::string text, std::string_view file, const Client& expected) {
  require(client_in(text, file) == expected, "a changed client file does not read as it should");
  return text;
}

// A client file whose text is to be changed.
struct OpenFile {
  OpenFile(std::string_view text, std::string_view name)
      : file(name), client(client_in(text, name)), edit(text, client_file(), name) {}

  [[nodiscard]] const JsonDocument& document() const { return edit.document(); }
  [[nodiscard]] const JsonValue* member(const JsonValue& object, std::string_view key) const {
    return document().member(object, key);
  }
  [[nodiscard]] const JsonValue* fittings() const { return member(document().root(), "fittings"); }
  [[nodiscard]] const JsonValue& fitting(std::size_t index) const {
    return document().child(*fittings(), index);
  }

  std::string_view file;
  Client client;
  JsonEdit edit;
};

std::string fitting_name(std::string_view date, int toile) {
  return fmt::format("the fitting of {}, toile {}", date, toile);
}

std::optional<std::size_t> index_of(const Client& client, const FittingOf& sought) {
  for (std::size_t i = 0; i < client.fittings.size(); ++i) {
    const Fitting& fitting = client.fittings[i];
    if (fitting.date == sought.date && fitting.toile == sought.toile) return i;
  }
  return std::nullopt;
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

// The place of a new fitting: behind those of earlier toiles and dates.
std::size_t place_of(const OpenFile& open, const Fitting& fitting) {
  const std::vector<Fitting>& all = open.client.fittings;
  const auto later = std::ranges::find_if(all, [&](const Fitting& other) {
    return std::tie(other.toile, other.date) > std::tie(fitting.toile, fitting.date);
  });
  const bool too_late = later != all.end() && later->date < fitting.date;
  const bool too_early = later != all.begin() && std::prev(later)->date > fitting.date;
  if (too_late || too_early) {
    const Fitting& other = too_late ? *later : *std::prev(later);
    refuse("client.order", std::string(open.file),
           fmt::format("{} would contradict {}: a later toile has no earlier date",
                       fitting_name(fitting.date, fitting.toile),
                       fitting_name(other.date, other.toile)),
           "correct the date or the number of the toile");
  }
  return static_cast<std::size_t>(later - all.begin());
}

std::string with_new_fitting(const OpenFile& open, const JsonPart& part, const Fitting& fitting) {
  const std::size_t place = place_of(open, fitting);
  Client expected = open.client;
  expected.fittings.insert(expected.fittings.begin() + static_cast<std::ptrdiff_t>(place), fitting);
  const JsonValue* list = open.fittings();
  std::string text = list == nullptr ? open.edit.with_member(open.document().root(), "fittings",
                                                             list_of_one(part, part.lines))
                                     : open.edit.with_element(*list, place, part);
  return proved(std::move(text), open.file, expected);
}

std::string with_next_correction(const OpenFile& open, std::size_t index, const JsonPart& part,
                                 const Correction& correction) {
  Client expected = open.client;
  expected.fittings[index].corrections.push_back(correction);
  const JsonValue& fitting = open.fitting(index);
  const JsonValue* list = open.member(fitting, "corrections");
  std::string text = list == nullptr
                         ? open.edit.with_member(fitting, "corrections",
                                                 list_of_one(part, open.edit.has_lines(fitting)))
                         : open.edit.with_element(*list, list->children.size(), part);
  return proved(std::move(text), open.file, expected);
}

// The text with a member of a fitting that is told beside the correction.
std::string with_fitting_text(const std::string& text, std::string_view file,
                              const FittingOf& sought, std::string_view key,
                              std::string Fitting::*member, const std::string& value) {
  if (value.empty()) return text;
  const OpenFile open(text, file);
  const auto index = index_of(open.client, sought);
  if (!index) return text;
  Client expected = open.client;
  std::string& known = expected.fittings[*index].*member;
  if (known == value) return text;
  if (open.member(open.fitting(*index), key) != nullptr) {
    refuse("client.duplicate", std::string(file),
           fmt::format("{} says \"{}\": {} already", fitting_name(sought.date, sought.toile), key,
                       shown(json_quoted(known))),
           fmt::format("leave \"{}\" out, or change it in the file", key));
  }
  known = value;
  return proved(open.edit.with_member(open.fitting(*index), key, json_text(value)), file, expected);
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

const JsonValue& correction_at(const OpenFile& open, const CorrectionPlace& place) {
  const JsonValue& list = *open.member(open.fitting(place.fitting), "corrections");
  return open.document().child(list, place.correction);
}

void refuse_same_day(const OpenFile& open, const std::string& date) {
  const auto& sessions = open.client.sessions;
  if (std::ranges::find(sessions, date, &Session::date) == sessions.end()) return;
  refuse("client.duplicate", std::string(open.file),
         fmt::format("there is a session of {} already", date),
         "give another date, or write readings of one day into one session as lists");
}

}  // namespace

std::string with_correction(std::string_view text, std::string_view file, const FittingOf& fitting,
                            const NewCorrection& correction) {
  std::string told =
      with_fitting_text(std::string(text), file, fitting, "by", &Fitting::by, fitting.by);
  told = with_fitting_text(told, file, fitting, "note", &Fitting::note, fitting.note);
  const OpenFile open(told, file);
  const JsonPart part = correction_part(correction, corrections_have_lines(open));
  const JsonPart whole = fitting_part(fitting, part, fittings_have_lines(open));
  const Fitting read = read_fitting_part(whole, open.client.unit, file);
  const auto index = index_of(open.client, fitting);
  return index ? with_next_correction(open, *index, part, read.corrections.front())
               : with_new_fitting(open, whole, read);
}

std::string with_withdrawn(std::string_view text, std::string_view file, std::size_t number,
                           bool withdrawn) {
  const OpenFile open(text, file);
  const CorrectionPlace place = place_of_number(open, number);
  Client expected = open.client;
  Correction& correction = expected.fittings[place.fitting].corrections[place.correction];
  if (correction.withdrawn == withdrawn) return std::string(text);
  correction.withdrawn = withdrawn;
  const WithdrawnMark mark(open.edit, correction_at(open, place));
  return proved(withdrawn ? mark.withdrawn() : mark.active(), file, expected);
}

std::string with_new_tape(std::string_view text, std::string_view file, std::size_t number,
                          OnNewTape answer) {
  require(answer != OnNewTape::Ask, "an answer on the new tape is keep or drop");
  const OpenFile open(text, file);
  const CorrectionPlace place = place_of_number(open, number);
  Client expected = open.client;
  expected.fittings[place.fitting].corrections[place.correction].on_new_tape = answer;
  const JsonValue& correction = correction_at(open, place);
  const std::string word = answer == OnNewTape::Keep ? "keep" : "drop";
  const JsonValue* told = open.member(correction, "new_tape");
  return proved(told == nullptr ? open.edit.with_member(correction, "new_tape", json_text(word))
                                : open.edit.with_bytes(told->begin, told->end, json_quoted(word)),
                file, expected);
}

std::string with_session(std::string_view text, std::string_view file, const NewSession& session) {
  const OpenFile open(text, file);
  refuse_same_day(open, session.date);
  const JsonValue& list = *open.member(open.document().root(), "sessions");
  const JsonValue& first = open.document().child(list, 0);
  const JsonPart part = session_part(session, open.edit.has_lines(first),
                                     open.edit.has_lines(*open.member(first, "tape")));
  Client expected = open.client;
  expected.sessions.push_back(read_session_part(part, open.client.unit, file));
  std::ranges::sort(expected.sessions, {}, &Session::date);
  return proved(open.edit.with_element(list, list.children.size(), part), file, expected);
}

}  // namespace blockwright
