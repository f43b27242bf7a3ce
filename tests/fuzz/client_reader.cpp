// Any bytes as a client file: read, or refused by name; what was read keeps the reader's promises
// and comes back the same from every edit of its text.
#include "blockwright/base/error.hpp"
#include "blockwright/measure/body.hpp"
#include "blockwright/measure/client_edit.hpp"
#include "must.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace {

using namespace blockwright;
using namespace blockwright_fuzz;

constexpr const char* kFile = "client.json";

Client read(const std::string& text) {
  std::istringstream in(text);
  return read_client(in, kFile);
}

void must_be_within_limits(const Session& session) {
  must(session.tape[MeasurementName::BustGirth].has_value(), "every session has a bust girth");
  for (const MeasurementInfo& entry : measurement_catalogue()) {
    const auto& readings = session.tape[entry.name];
    if (!readings) continue;
    must(!readings->values.empty(), "a measurement that is there has a reading");
    for (const Measure value : readings->values) {
      must(value >= entry.least && value <= entry.most, "readings are within the limits");
    }
  }
}

void must_be_sound(const Client& client) {
  must(!client.sessions.empty(), "a client has a session");
  must(std::ranges::is_sorted(client.sessions, {}, &Session::date), "sessions follow their dates");
  for (const Session& session : client.sessions) {
    must_be_within_limits(session);
    judge(session, fill_in(session), {client.unit});
  }
  for (const Fitting& fitting : client.fittings) {
    for (const Correction& correction : fitting.corrections) {
      must(std::isfinite(correction.by.mm()) && correction.by > Length(),
           "amounts are more than 0");
      must(find_correction_words(correction.action, correction.place) != nullptr,
           "corrections are of known words");
    }
  }
}

// The edit proves its result by reading it again; a std::logic_error of it is a finding.
template <class Edit>
void try_edit(Edit&& edit) {
  try {
    edit();
  } catch (const InputError& error) {
    must_tell(error.problem(), kFile, "client.");
  }
}

void must_survive_edits(const std::string& text) {
  try_edit([&] {
    with_session({text, kFile}, {"2199-12-31", "R.", {{MeasurementName::BustGirth, {"90"}}}});
  });
  try_edit([&] {
    with_correction({text, kFile}, {"2199-12-31", 99, "R.", "again"},
                    {"lower", "front_neck", "1", std::nullopt, BodySide::Both, "tight"});
  });
  try_edit([&] {
    const std::string withdrawn = with_withdrawn({text, kFile}, 1);
    const std::string active = with_active({withdrawn, kFile}, 1);
    must(withdrawn == text || active == text, "there and back is the same text");
  });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  try {
    must_be_sound(read(text));
  } catch (const InputError& error) {
    must_tell(error.problem(), kFile, "client.");
    return 0;
  }
  must_survive_edits(text);
  return 0;
}
